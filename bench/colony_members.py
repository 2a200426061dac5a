"""What colony_step.py steps: many members of a colony side by side, one NumPy array a row of src/core/colony/rows.hpp,
each ring of cohorts one array. They start as in colony_year.hpp."""
import numpy as np

WORKER, CAPPED, DRONE, DRONE_CAPPED, AGES = 21, 9, 24, 10, 24
F = np.float32


class Figures:
    def __init__(self, pairs):
        for key, value in pairs:
            setattr(self, key, F(value))


class Colonies:
    def __init__(self, rates, members):
        def each(value):
            return np.full(members, value, F)

        self.n = members
        self.worker = np.full((WORKER, members), 500 / WORKER, F)
        self.drone = np.zeros((DRONE, members), F)
        self.worker_mites = np.zeros((WORKER - CAPPED, members), F)
        self.drone_mites = np.zeros((DRONE - DRONE_CAPPED, members), F)
        self.hive = np.zeros((AGES, members), F)
        under = 100 * 0.63 * min(1.0, 500 / 13000 / 0.5)
        self.worker_mites += F(under / (WORKER - CAPPED))
        self.mites = each(100 - under)
        self.old_hive, self.foragers, self.drones = each(0), each(0), each(0)
        self.winter, self.winter_harmed = each(13000), each(0)
        self.winter_reared, self.winter_reared_infested = each(0), each(0)
        self.stores, self.nectar, self.pollen = each(18), each(0), each(0.75)
        self.undrawn_nest, self.undrawn_super = each(6), each(0)
        self.queen, self.mated, self.alive = (np.ones(members, bool) for _ in range(3))
        self.caged = np.zeros(members, bool)
        self.queen_clock, self.queen_age, self.vigour = each(365), each(365), each(1)
        self.cells, self.cell_age = each(0), each(0)
        self.of_swarm = np.zeros(members, bool)
        self.luck = np.zeros((3, members), F)
        self.first_day = {event: each(1e9) for event in (
            "swarm_preparation", "swarm", "cast", "queen_loss", "supersedure", "starvation", "robbing", "absconding",
            "death")}
        self.trait = {k: each(getattr(rates, k)) for k in (
            "laying_max", "forager_loss", "collecting", "swarming", "winter_loss", "heat_use", "mite_reproduction",
            "mite_invasion", "mite_immigration", "treatment_effect")}
        self.trait["season_end"] = each(min(rates.season_end, rates.season_turn_light_h - F(0.5)))
        # For how many mornings there may still be brood.
        self.worker_brood_for, self.drone_brood_for = WORKER + 1, DRONE + 1
        self.keeps = np.array([[rates.vigour_keeps], [rates.forage_keeps], [rates.mite_keeps]], F)
        ages = np.arange(AGES, dtype=F)
        self.leaving = np.clip((ages - rates.onset_first_age_days) / rates.onset_ramp_days, 0, 1).astype(F)

    def note(self, event, where, number):
        first = self.first_day[event]
        first[where] = np.minimum(first[where], number)

    def room(self, d, r, brood, drone_brood):
        honey = self.stores + self.nectar
        cap = np.maximum(d.super_combs - self.undrawn_super, 0) * d.honey_kg_per_comb
        super_kg = np.minimum(cap, np.maximum(honey - r.nest_stores_kg, 0))
        nest = np.maximum(d.nest_combs - self.undrawn_nest, 0) * d.cells_per_comb
        nest_kg = honey - super_kg
        all_food = nest_kg * d.cells_per_honey_kg + self.pollen * r.pollen_cells_per_kg
        food = np.where(self.undrawn_nest > 0, np.minimum(all_food, nest * r.new_nest_food_share), all_food)
        used = brood + drone_brood * r.drone_cell_room + food
        homeless = np.minimum((all_food - food) / d.cells_per_honey_kg, nest_kg)
        return np.maximum(nest - used, 0), cap - super_kg, nest_kg, homeless


def leave_with_queen(c, r, goes, share, bees):
    """A part of everything that can fly leaves. Returns how many bees do."""
    at = np.flatnonzero(goes)
    gone = np.zeros(c.n, F)
    gone[at] = share
    stay = 1 - gone[at]
    c.hive[:, at] *= stay
    for pool in (c.old_hive, c.foragers, c.winter, c.winter_harmed, c.mites):
        pool[at] *= stay
    c.drones[at] *= 1 - gone[at] * F(0.5)
    leaving = bees * gone
    c.stores = np.maximum(c.stores - leaving * (r.swarm_honey_g_per_bee / F(1000)), 0)
    return leaving


def mean_row(c):
    worker, drone = c.worker.sum(axis=0), c.drone.sum(axis=0)
    under = c.worker_mites.sum(axis=0) + c.drone_mites.sum(axis=0)
    bees = c.hive.sum(axis=0) + c.old_hive + c.foragers + c.winter + c.winter_harmed
    laying = c.queen & c.mated & (c.queen_clock >= 3) & ~c.caged
    swarm_cells = np.where((c.cell_age >= 3) & c.of_swarm, c.cells, 0)
    shown = (bees, worker, drone, c.drones, c.stores + c.nectar, c.pollen, c.mites + under, c.mites,
             c.undrawn_nest + c.undrawn_super, laying, swarm_cells, c.alive)
    row = []
    for x in shown:  # mean and its standard error
        row += [float(x.mean(dtype=np.float64)), float(x.std(dtype=np.float64)) / c.n**0.5]
    return row
