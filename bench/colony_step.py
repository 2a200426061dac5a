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

from colony_members import AGES, CAPPED, DRONE, DRONE_CAPPED, F, WORKER, Colonies, Figures, leave_with_queen, mean_row

MEMBERS, DAYS = 1024, 365


def step(c, d, r, turn, draw):
    one = F(1)
    none = np.zeros(c.n, F)
    score = draw.standard_normal((3, c.n), dtype=F)
    luck_swarm, luck_queen = draw.random((2, c.n), dtype=F)
    c.luck = c.luck * c.keeps + score * np.array([[d.laying_step], [d.forage_step], [d.mite_step]], F)

    # emerge
    w, dr, h = turn % WORKER, turn % DRONE, turn % AGES
    wm, dm = turn % (WORKER - CAPPED), turn % (DRONE - DRONE_CAPPED)
    cells, drone_cells = c.worker[w].copy(), c.drone[dr].copy()
    mothers, drone_mothers = c.worker_mites[wm].copy(), c.drone_mites[dm].copy()
    infested = emerged = none
    if mothers.any() or drone_mothers.any():
        load = mothers / np.maximum(cells, one)
        drone_load = drone_mothers / np.maximum(drone_cells, one)
        infested = one - np.exp(-load)
        reproduction = np.maximum(c.trait["mite_reproduction"] + d.mite_young_more, 0)
        emerged = (mothers * reproduction / (one + load * r.mite_crowding)
                   + drone_mothers * r.mite_reproduction_drone / (one + drone_load * r.mite_crowding))
    born = cells - cells * infested * r.infested_brood_dies
    summer_born = born
    if d.lengthening:
        c.winter_reared[:] = 0
        c.winter_reared_infested[:] = 0
    elif d.winter_share > 0:
        winter_born = born * d.winter_share
        harmed = winter_born * infested
        c.winter_reared += winter_born
        c.winter_reared_infested += harmed
        c.winter += winter_born - harmed
        c.winter_harmed += harmed
        summer_born = born - winter_born
    c.drones += drone_cells
    c.old_hive += c.hive[h]
    c.hive[h] = summer_born
    c.worker[w] = 0
    c.drone[dr] = 0

    # count
    leaving = c.leaving[(turn - np.arange(AGES)) % AGES]  # by place in the ring
    hive = c.hive.sum(axis=0)
    for_field = leaving @ c.hive
    winter = c.winter + c.winter_harmed
    before = hive + c.old_hive + c.foragers + winter
    larval = (turn - np.arange(3, CAPPED)) % WORKER
    larvae = brood = drone_brood = none
    if c.worker_brood_for > 0:
        c.worker_brood_for -= 1
        larvae = c.worker[larval].sum(axis=0)
        brood = c.worker.sum(axis=0)
    if c.drone_brood_for > 0:
        c.drone_brood_for -= 1
        drone_brood = c.drone.sum(axis=0)

    # age
    per_bee = one / np.maximum(before, one)
    burden = np.minimum(c.mites * per_bee, one) * r.mite_burden_loss_per_day
    keep = one - r.hive_loss_per_day - burden
    recruit = np.maximum(d.recruit_most - c.foragers * per_bee * d.recruit_checked, 0)
    keep_recruited = keep * recruit
    stay = np.multiply.outer(leaving, keep_recruited)
    np.subtract(keep, stay, out=stay)
    c.hive *= stay
    gone = for_field * keep_recruited
    old = c.old_hive * (one - burden - r.old_hive_loss_per_day)
    old_gone = old * recruit
    c.old_hive = old - old_gone
    lost = burden + r.forager_rest_loss_per_day + c.trait["forager_loss"] * d.flight_hours
    c.foragers = c.foragers * np.exp(-lost) + gone + old_gone
    rearing = np.minimum(brood * per_bee, one) * (one - d.winter_idle_work) + d.winter_idle_work
    winter_loss = c.trait["winter_loss"] + rearing * d.winter_work_loss + burden
    c.winter *= np.exp(-winter_loss)
    c.winter_harmed *= np.exp(-winter_loss * r.harmed_winter_loss_times)
    c.drones *= d.drones_keep
    winter = c.winter + c.winter_harmed
    nurses = hive * keep - gone + c.old_hive + winter
    bees = nurses + c.foragers
    died = before - bees
    left = none

    # bring home
    if d.nectar_kg > 0 or d.pollen_kg > 0:
        zeal = ((c.foragers + winter * r.winter_work_share) * F(1e-4) * c.trait["collecting"])
        nectar = zeal * np.maximum(c.luck[1] + one, 0) * d.nectar_kg
        free, above, nest_kg, _ = c.room(d, r, brood, drone_brood)
        below = np.minimum(free * d.honey_kg_per_free_cell, np.maximum(d.nest_honey_kg - nest_kg, 0))
        c.nectar += np.minimum(nectar, above + below)
        c.pollen = np.minimum(c.pollen + zeal * d.pollen_kg, r.pollen_store_max_kg)

    # eat
    eaters = larvae + drone_brood * r.drone_larva_share
    heat = c.trait["heat_use"] * d.heat_honey_kg * c.alive
    need = bees * d.bee_honey_kg + eaters * d.larva_honey_kg + heat
    from_nectar = np.minimum(need, c.nectar)
    from_stores = np.minimum(need - from_nectar, c.stores)
    missing = need - from_nectar - from_stores
    ripe = (c.nectar - from_nectar) * r.ripening_per_day
    c.nectar -= from_nectar + ripe
    c.stores += ripe - from_stores
    pollen = c.pollen
    c.pollen = np.maximum(pollen - eaters * d.larva_pollen_kg, 0)
    hungry = np.flatnonzero(missing > 0)
    if hungry.size > 0:
        starving = missing[hungry] / np.maximum(need[hungry], F(1e-6))
        stay = one - starving * r.starving_loss_per_day
        c.hive[:, hungry] *= stay
        for pool in (c.old_hive, c.foragers, c.winter, c.winter_harmed, c.drones):
            pool[hungry] *= stay
        c.worker[larval[:, None], hungry] *= one - starving * F(0.5)
        died[hungry] += bees[hungry] * (one - stay)
        bees[hungry] *= stay
        nurses[hungry] *= stay
        c.note("starvation", hungry[c.alive[hungry] & (starving > 0.5)], turn)

    # be robbed
    if d.robbers:
        weak = (bees < r.rob_below_bees) & (c.stores > 0)
        if weak.any():
            weakness = one - bees * (one / r.rob_below_bees)
            taken = np.where(weak, np.minimum(weakness * d.rob_kg, c.stores), 0)
            c.stores -= taken
            c.note("robbing", taken > 0.05, turn)

    # draw comb
    if d.draw_combs_per_bee > 0 and (c.undrawn_nest.any() or c.undrawn_super.any()):
        homeless = np.minimum(c.room(d, r, brood, drone_brood)[3], c.stores)
        flow = np.minimum(np.maximum(c.nectar, homeless) / r.flow_kg_per_day, one)
        built = bees * d.draw_combs_per_bee * flow
        nest = np.minimum(built, c.undrawn_nest)
        top = np.minimum(built - nest, c.undrawn_super)
        c.undrawn_nest -= nest
        c.undrawn_super -= top
        wax = (nest + top) * r.comb_honey_kg
        from_nectar = np.minimum(wax, c.nectar)
        c.nectar = c.nectar - from_nectar
        c.stores = c.stores - np.minimum(wax - from_nectar, homeless)

    # lay
    eggs = none
    lays = c.queen & c.mated & (c.queen_clock > 2.5) & ~c.caged
    years = c.queen_age / F(365)
    if d.laying > 0 or d.swarm_rate > 0:
        free, _, _, _ = c.room(d, r, brood, drone_brood)
    if d.laying > 0:
        age = np.maximum(years - r.laying_falls_from_years, 0)
        power = (c.trait["laying_max"] * c.vigour
                 * np.maximum(one + c.luck[0] - age * r.laying_falls_per_year, 0))
        nursed = nurses / (nurses + r.half_laying_bees)
        fed = pollen / (pollen + r.pollen_half_kg) * np.minimum((c.stores + c.nectar) / r.laying_stores_kg, one)
        if d.lengthening:
            season = d.laying
        else:
            end = c.trait["season_end"]
            season = np.clip((d.light - end) / np.maximum(d.season_turn - end, F(0.5)), 0, 1) * F(d.warm * d.season_peak)
        limit = np.minimum(free, np.maximum(nurses * r.care_cells_per_bee - brood, 0)) / r.egg_wait_days
        eggs = np.where(lays, np.minimum(power * nursed * fed * season, limit), 0)
        males = none
        if d.drone_share > 0:
            males = bees / (bees + r.drone_half_bees) * d.drone_share * eggs
        drone_layer = c.queen & ~c.mated & (c.queen_clock > 28) & ~c.caged
        lays_drones = drone_layer.any()
        if lays_drones:
            males = males + np.where(drone_layer, np.minimum(d.drone_layer_eggs, limit), 0)
        c.worker[w] = eggs
        c.drone[dr] = males
        c.worker_brood_for = WORKER + 1
        if d.drone_share > 0 or lays_drones:
            c.drone_brood_for = DRONE + 1
        brood = brood + eggs

    # mites enter
    into_drone_cells = c.drone[(turn - DRONE_CAPPED) % DRONE] * r.drone_cell_preference
    capped = c.worker[(turn - CAPPED) % WORKER] + into_drone_cells
    entering = into_drones = none
    if capped.any():
        plenty = np.minimum(capped / (np.maximum(bees, one) * r.usual_cells_per_bee), r.cells_per_bee_most)
        rate = c.trait["mite_invasion"] * plenty * np.maximum(one + c.luck[2], 0)
        entering = c.mites * (one - np.exp(-rate))
        into_drones = entering * (into_drone_cells / np.maximum(capped, one))
    c.worker_mites[wm] = entering - into_drones
    c.drone_mites[dm] = into_drones
    broodless = one - brood / (brood + r.mite_brood_half_cells)
    own_loss = r.mite_loss_per_day + broodless * (r.mite_winter_loss_per_day - r.mite_loss_per_day)
    loss = np.maximum(own_loss, broodless * died * per_bee)  # with the bees that carry them
    c.mites = (c.mites - entering) * (one - loss) + emerged
    if d.mites_in > 0:
        c.mites += c.trait["mite_immigration"] * d.mites_in * c.alive
    np.minimum(c.mites, bees * r.mites_per_bee_most, out=c.mites)

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
        full = np.clip(bees / max(d.bees_at_home, one) - r.full_hive_from_share, 0, 1)
        old = np.minimum(years, F(3)) * r.swarm_age_weight + (one - r.swarm_age_weight)
        inclined = c.trait["swarming"] * old * (crowded * r.crowded_weight + full)
        able = (bees > r.swarm_min_bees) & lays & ~has
        starts = able & (luck_swarm < one - np.exp(-inclined * d.swarm_rate))
    if (has | starts).any():
        age = c.cell_age + has
        tired = (luck_swarm < r.give_up_per_day) & (age < 8)
        gives_up = c.of_swarm & has & c.queen & (tired | (age > 14.5))
        c.cells = np.where(starts, r.swarm_cells, np.where(gives_up, F(0), c.cells))
        c.cell_age = np.where(gives_up | starts, F(0), age)
        c.of_swarm = (c.of_swarm & ~gives_up) | starts
        c.note("swarm_preparation", c.of_swarm & (c.cell_age > 2.5), turn)

    # swarm
    if d.swarm_weather:
        goes = c.of_swarm & (c.cell_age > 7.5) & lays
        if goes.any():
            share = np.clip(r.swarm_share + score[1, goes] * F(0.05), 0, 1)
            left = leave_with_queen(c, r, goes, share, bees)
            bees = bees - left
            c.queen = c.queen & ~goes
            c.note("swarm", goes, turn)

    # change the queen
    c.queen_clock += c.queen
    years += r.queen_age_from_years
    old_queen = c.queen & c.mated
    fails = years * r.queen_fails_per_day
    lost = old_queen & (luck_queen < fails)
    supersedes = old_queen & (c.cells < 1) & (luck_queen > one - years * d.supersedes)
    c.queen_age += one
    if ((c.cells > 0) | (c.alive & ~old_queen) | lost | supersedes).any():
        spent = lost & (luck_queen < fails * r.queen_fails_as_drone_layer)
        gone = c.queen & ~c.mated & (c.queen_clock > 28) & (luck_queen < r.drone_layer_lost_per_day)
        lost = lost | gone
        c.queen = c.queen & (spent | ~lost)
        c.mated = c.mated & ~spent
        c.queen_clock[spent] = 29
        c.cells = c.cells + supersedes * r.supersede_cells
        c.cell_age = np.where(supersedes, F(0), c.cell_age)
        young = c.worker[(turn - np.arange(1, 5)) % WORKER].sum(axis=0) + eggs
        raises = ~c.queen & (c.cells < 1) & (young > 10) & c.alive
        c.cells = c.cells + raises * r.emergency_cells
        c.cell_age = np.where(raises, F(4), c.cell_age)
        hatches = (c.cells > 0) & (c.cell_age > 15.5) & c.alive & ~(c.queen & c.of_swarm)
        if d.swarm_weather:
            casts = hatches & c.of_swarm & (bees > r.cast_min_bees) & (luck_swarm < r.cast_odds)
            if casts.any():
                leaving = leave_with_queen(c, r, casts, r.cast_share, bees)
                left = left + leaving
                bees = bees - leaving
                c.note("cast", casts, turn)
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
        c.note("queen_loss", lost, turn)
        c.note("supersedure", supersedes, turn)

    # abscond: left without food on a day fit to fly
    if d.swarm_weather:
        goes = (c.stores + c.nectar < r.abscond_stores_kg) & c.alive & (luck_swarm > one - r.abscond_per_day)
        if goes.any():
            left = left + bees * goes
            bees = bees * ~goes
            c.note("absconding", goes, turn)

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
        c.note("death", ended, turn)
    return eggs, born, died, left, emerged


def main(folder):
    with open(folder + "/rates.csv") as file:
        rates = Figures((row["key"], row["value"]) for row in csv.DictReader(file))
    with open(folder + "/days.csv") as file:
        days = [Figures(row.items()) for row in csv.DictReader(file)]

    def live(members, keep=None):
        colonies, draw = Colonies(rates, members), np.random.default_rng(1)
        for turn, day in enumerate(days, start=1):
            step(colonies, day, rates, turn, draw)
            if keep is not None:
                keep.append([turn] + mean_row(colonies))

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
