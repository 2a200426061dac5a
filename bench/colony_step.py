"""The daily step of src/core/colony, stage by stage, in vectorised NumPy, for comparison of time:
    python3 colony_step.py FOLDER
reads rates.csv and days.csv, prints nanoseconds per member and day, writes the mean course to course_numpy.csv.
The same algorithm, stages in the same order, single precision; luck by NumPy's own generator (PCG64): normal scores
and uniforms. Rings turn by an index, as in C++: ageing moves no data. Stages that a day has no use for are passed
over, as in C++."""
import csv
import sys
import time

import numpy as np

MEMBERS, DAYS = 1024, 365
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
        self.first_day = {e: each(1e9) for e in ("preparation", "swarm", "queen_loss", "starvation", "death")}
        self.trait = {k: each(getattr(rates, k)) for k in (
            "laying_max", "forager_loss", "collecting", "swarming", "winter_loss", "mite_reproduction",
            "mite_invasion", "mite_immigration", "treatment_effect")}
        self.keeps = np.array([[rates.vigour_keeps], [rates.forage_keeps], [rates.mite_keeps]], F)
        ages = np.arange(AGES, dtype=F)
        self.leaving = np.clip((ages - rates.onset_first_age_days) / rates.onset_ramp_days, 0, 1).astype(F)

    def note(self, event, where, number):
        if where.any():
            self.first_day[event][where] = np.minimum(self.first_day[event][where], number)

    def lays(self):
        return self.queen & self.mated & (self.queen_clock > 2.5) & ~self.caged

    def room(self, d, r, brood, drone_brood):
        honey = self.stores + self.nectar
        cap = np.maximum(d.super_combs - self.undrawn_super, 0) * d.honey_kg_per_comb
        super_kg = np.minimum(cap, np.maximum(honey - r.nest_stores_kg, 0))
        nest = np.maximum(d.nest_combs - self.undrawn_nest, 0) * d.cells_per_comb
        used = (brood + drone_brood * F(1.4) + (honey - super_kg) * d.cells_per_honey_kg
                + self.pollen * r.pollen_cells_per_kg)
        return np.maximum(nest - used, 0), cap - super_kg


def step(c, d, r, turn, draw, number):
    one = F(1)
    score = draw.standard_normal((3, c.n), dtype=F)
    luck_swarm, luck_queen = draw.random((2, c.n), dtype=F)
    c.luck = c.luck * c.keeps + score * np.array([[d.laying_step], [d.forage_step], [d.mite_step]], F)

    # emerge
    w, dr, h = turn % WORKER, turn % DRONE, turn % AGES
    wm, dm = turn % (WORKER - CAPPED), turn % (DRONE - DRONE_CAPPED)
    cells, drone_cells = c.worker[w].copy(), c.drone[dr].copy()
    mothers, drone_mothers = c.worker_mites[wm].copy(), c.drone_mites[dm].copy()
    load = mothers / np.maximum(cells, one)
    drone_load = drone_mothers / np.maximum(drone_cells, one)
    infested = one - np.exp(-load)
    emerged = (mothers * c.trait["mite_reproduction"] / (one + load * r.mite_crowding)
               + drone_mothers * r.mite_reproduction_drone / (one + drone_load * r.mite_crowding))
    born = cells - cells * infested * r.infested_brood_dies
    winter_born = born * d.winter_share
    if d.lengthening:
        c.winter_reared[:] = 0
        c.winter_reared_infested[:] = 0
    elif d.winter_share > 0:
        harmed = winter_born * infested
        c.winter_reared += winter_born
        c.winter_reared_infested += harmed
        c.winter += winter_born - harmed
        c.winter_harmed += harmed
    c.drones += drone_cells
    c.old_hive += c.hive[h]
    c.hive[h] = born - winter_born
    c.worker[w] = 0
    c.drone[dr] = 0

    # count
    leaving_share = c.leaving[(turn - np.arange(AGES)) % AGES][:, None]
    hive = c.hive.sum(axis=0)
    winter = c.winter + c.winter_harmed
    before = hive + c.old_hive + c.foragers + winter
    larvae = c.worker[(turn - np.arange(3, CAPPED)) % WORKER].sum(axis=0)
    brood = c.worker.sum(axis=0)
    drone_brood = c.drone.sum(axis=0)

    # age
    per_bee = one / np.maximum(before, one)
    burden = np.minimum(c.mites * per_bee, one) * r.mite_burden_loss_per_day
    keep = one - r.hive_loss_per_day - burden
    recruit = np.maximum(d.recruit_most - c.foragers * per_bee * d.recruit_checked, 0)
    c.hive *= keep
    leave = c.hive * (leaving_share * recruit)
    c.hive -= leave
    old = c.old_hive * (one - burden - r.old_hive_loss_per_day)
    old_leave = old * recruit
    c.old_hive = old - old_leave
    lost = burden + r.forager_rest_loss_per_day + c.trait["forager_loss"] * d.flight_hours
    c.foragers = c.foragers * np.exp(-lost) + leave.sum(axis=0) + old_leave
    rearing = np.minimum(brood * per_bee, one) * F(0.85) + F(0.15)
    winter_loss = c.trait["winter_loss"] + rearing * d.winter_work_loss + burden
    c.winter *= np.exp(-winter_loss)
    c.winter_harmed *= np.exp(-winter_loss * r.harmed_winter_loss_times)
    c.drones *= d.drones_keep
    winter = c.winter + c.winter_harmed
    nurses = c.hive.sum(axis=0) + c.old_hive + winter
    bees = nurses + c.foragers
    died = before - bees

    # bring home
    if d.nectar_kg > 0 or d.pollen_kg > 0:
        zeal = ((c.foragers + winter * r.winter_work_share) * F(1e-4) * c.trait["collecting"]
                * np.maximum(c.luck[1] + one, 0))
        free, above = c.room(d, r, brood, drone_brood)
        c.nectar += np.minimum(zeal * d.nectar_kg, above + free * d.honey_kg_per_free_cell)
        c.pollen = np.minimum(c.pollen + zeal * d.pollen_kg, r.pollen_store_max_kg)

    # eat
    eaters = larvae + drone_brood * F(0.45)
    need = bees * d.bee_honey_kg + eaters * d.larva_honey_kg + d.heat_honey_kg * c.alive
    from_nectar = np.minimum(need, c.nectar)
    from_stores = np.minimum(need - from_nectar, c.stores)
    missing = need - from_nectar - from_stores
    ripe = (c.nectar - from_nectar) * r.ripening_per_day
    c.nectar -= from_nectar + ripe
    c.stores += ripe - from_stores
    pollen = c.pollen
    c.pollen = np.maximum(pollen - eaters * d.larva_pollen_kg, 0)
    if (missing > 0).any():
        starving = missing / np.maximum(need, F(1e-6))
        stay = one - starving * r.starving_loss_per_day
        c.hive *= stay
        for pool in (c.old_hive, c.foragers, c.winter, c.winter_harmed, c.drones):
            pool *= stay
        c.worker[(turn - np.arange(3, CAPPED)) % WORKER] *= one - starving * F(0.5)
        died += bees * (one - stay)
        bees = bees * stay
        nurses = nurses * stay
        c.note("starvation", c.alive & (starving > 0.5), number)

    # draw comb
    if d.draw_combs_per_bee > 0:
        flow = np.minimum(c.nectar / r.flow_kg_per_day, one)
        built = bees * d.draw_combs_per_bee * flow
        nest = np.minimum(built, c.undrawn_nest)
        top = np.minimum(built - nest, c.undrawn_super)
        c.undrawn_nest -= nest
        c.undrawn_super -= top
        c.nectar = np.maximum(c.nectar - (nest + top) * r.comb_honey_kg, 0)

    # lay
    eggs = np.zeros(c.n, F)
    if d.laying > 0 or d.swarm_rate > 0:
        free, _ = c.room(d, r, brood, drone_brood)
    if d.laying > 0:
        age = np.maximum(c.queen_age / F(365) - F(1.5), 0)
        power = (c.trait["laying_max"] * c.vigour
                 * np.maximum(one + c.luck[0] - age * r.laying_falls_per_year, 0))
        nursed = nurses / (nurses + r.half_laying_bees)
        fed = pollen / (pollen + r.pollen_half_kg)
        limit = np.minimum(free, np.maximum(nurses * r.care_cells_per_bee - brood, 0)) / r.egg_wait_days
        eggs = np.where(c.lays(), np.minimum(power * nursed * fed * d.laying, limit), 0)
        males = bees / (bees + r.drone_half_bees) * d.drone_share * eggs
        drone_layer = c.queen & ~c.mated & (c.queen_clock > 28) & ~c.caged
        if drone_layer.any():
            males = males + np.where(drone_layer, np.minimum(d.drone_layer_eggs, limit), 0)
        c.worker[w] = eggs
        c.drone[dr] = males
        brood = brood + eggs

    # mites enter
    into_drone_cells = c.drone[(turn - DRONE_CAPPED) % DRONE] * r.drone_cell_preference
    capped = c.worker[(turn - CAPPED) % WORKER] + into_drone_cells
    plenty = np.minimum(capped / (np.maximum(bees, one) * r.usual_cells_per_bee), F(2))
    rate = c.trait["mite_invasion"] * plenty * np.maximum(one + c.luck[2], 0)
    entering = c.mites * (one - np.exp(-rate))
    into_drones = entering * (into_drone_cells / np.maximum(capped, one))
    c.worker_mites[wm] = entering - into_drones
    c.drone_mites[dm] = into_drones
    loss = r.mite_winter_loss_per_day + brood / (brood + F(1000)) * (r.mite_loss_per_day - r.mite_winter_loss_per_day)
    c.mites = (c.mites - entering) * (one - loss) + emerged + c.trait["mite_immigration"] * d.mites_in * c.alive

    # treat
    if d.kill_on_bees > 0:
        c.mites *= np.exp(-c.trait["treatment_effect"] * d.kill_on_bees)
    if d.kill_under_cappings > 0:
        stay = np.exp(-c.trait["treatment_effect"] * d.kill_under_cappings)
        c.worker_mites *= stay
        c.drone_mites *= stay

    # prepare to swarm
    has = c.cells > 0
    starts = np.zeros(c.n, bool)
    if d.swarm_rate > 0:
        crowded = one - np.minimum(
            free / (np.maximum(d.nest_combs - c.undrawn_nest, one) * (d.cells_per_comb * r.crowded_free_share)), one)
        full = np.clip(bees / max(d.bees_at_home, one) - F(0.4), 0, 1)
        age = np.minimum(c.queen_age / F(365), F(3))
        inclined = c.trait["swarming"] * (age * F(0.5) + F(0.5)) * (crowded * F(0.7) + full)
        able = (bees > r.swarm_min_bees) & c.lays() & ~has
        starts = able & (luck_swarm < one - np.exp(-inclined * d.swarm_rate))
    if (has | starts).any():
        age = c.cell_age + has
        tired = (luck_swarm < r.give_up_per_day) & (age < 8)
        gives_up = c.of_swarm & has & c.queen & (tired | (age > 14.5))
        c.cells = np.where(starts, r.swarm_cells, np.where(gives_up, F(0), c.cells))
        c.cell_age = np.where(gives_up | starts, F(0), age)
        c.of_swarm = (c.of_swarm & ~gives_up) | starts
        c.note("preparation", c.of_swarm & (c.cell_age > 2.5), number)

    # swarm
    if d.swarm_weather:
        goes = c.of_swarm & (c.cell_age > 7.5) & c.lays()
        if goes.any():
            gone = np.where(goes, np.clip(r.swarm_share + score[1] * F(0.05), 0, 1), 0).astype(F)
            stay = one - gone
            c.hive *= stay
            for pool in (c.old_hive, c.foragers, c.winter, c.winter_harmed, c.mites):
                pool *= stay
            c.drones *= one - gone * F(0.5)
            c.stores = np.maximum(c.stores - bees * gone * (r.swarm_honey_g_per_bee / F(1000)), 0)
            c.queen = c.queen & ~goes
            bees = bees * stay
            c.note("swarm", goes, number)

    # change the queen
    c.queen_clock += c.queen
    years = c.queen_age / F(365) + F(0.3)
    old_queen = c.queen & c.mated
    lost = old_queen & (luck_queen < years * r.queen_fails_per_day)
    supersedes = old_queen & (c.cells < 1) & (luck_queen > one - years * d.supersedes)
    c.queen_age += one
    if ((c.cells > 0) | (c.alive & ~old_queen) | lost | supersedes).any():
        c.queen = c.queen & ~lost
        c.cells = c.cells + supersedes * r.supersede_cells
        c.cell_age = np.where(supersedes, F(0), c.cell_age)
        young = c.worker[(turn - np.arange(1, 5)) % WORKER].sum(axis=0) + eggs
        raises = ~c.queen & (c.cells < 1) & (young > 10) & c.alive
        c.cells = c.cells + raises * r.emergency_cells
        c.cell_age = np.where(raises, F(4), c.cell_age)
        hatches = (c.cells > 0) & (c.cell_age > 15.5) & c.alive & ~(c.queen & c.of_swarm)
        c.queen = c.queen | hatches
        c.mated = c.mated & ~hatches
        c.of_swarm = c.of_swarm & ~hatches
        c.caged = c.caged & ~hatches
        for what in (c.queen_clock, c.cells, c.cell_age, c.queen_age):
            what[hatches] = 0
        c.vigour = np.where(hatches, one + score[0] * F(0.1), c.vigour)
        if d.mating_weather:
            flies = c.queen & ~c.mated & (c.queen_clock > 4.5) & (c.queen_clock < 28) & ~c.caged
            mates = flies & (luck_queen < d.mates_below)
            not_back = flies & ~mates & (luck_queen < r.mating_odds_per_day)
            c.mated = c.mated | mates
            c.queen_clock[mates] = 0
            c.queen = c.queen & ~not_back
            lost = lost | not_back
        c.mated = c.mated & c.queen
        c.caged = c.caged & c.queen
        c.queen_clock = c.queen_clock * c.queen
        c.note("queen_loss", lost, number)

    # close the day
    ended = c.alive & ~(bees > r.too_few_bees)
    if ended.any():
        died += bees * ended
        for ring in (c.worker, c.drone, c.worker_mites, c.drone_mites, c.hive):
            ring[:, ended] = 0
        for pool in (c.old_hive, c.foragers, c.winter, c.winter_harmed, c.drones, c.mites, c.cells, c.cell_age,
                     c.queen_clock, c.queen_age, c.vigour):
            pool[ended] = 0
        for what in (c.queen, c.mated, c.caged, c.of_swarm, c.alive):
            what[ended] = False
        c.note("death", ended, number)
    return eggs, born, died


def mean_row(c, d):
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


def main(folder):
    with open(folder + "/rates.csv") as file:
        rates = Figures((row["key"], row["value"]) for row in csv.DictReader(file))
    with open(folder + "/days.csv") as file:
        days = [Figures(row.items()) for row in csv.DictReader(file)]

    def live(members, keep=None):
        colonies, draw = Colonies(rates, members), np.random.default_rng(1)
        for turn, day in enumerate(days, start=1):
            step(colonies, day, rates, turn, draw, turn)
            if keep is not None:
                keep.append([turn] + mean_row(colonies, day))

    course = []
    live(MEMBERS, course)
    names = ("bees", "brood_cells", "drone_brood", "drones", "stores_kg", "pollen_kg", "mites", "mites_on_bees",
             "undrawn_combs", "queen_laying", "swarm_cells", "alive")
    with open(folder + "/course_numpy.csv", "w") as file:
        print("day", *(f"{name},{name}_se" for name in names), sep=",", file=file)
        for row in course:
            print(*row, sep=",", file=file)
    # NumPy's overhead a call weighs less with more members at once, its memory more: the better of two sizes counts.
    best = {}
    for members in (MEMBERS, 8 * MEMBERS):
        best[members] = 1e30
        for _ in range(3):
            begin = time.process_time()
            live(members)
            best[members] = min(best[members], (time.process_time() - begin) * 1e9 / (members * DAYS))
        print(f"numpy_{members} {best[members]:.1f}")
    print(f"numpy {min(best.values()):.1f}")


main(sys.argv[1])
