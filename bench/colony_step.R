# The daily step of src/core/colony, stage by stage, in vectorised R, for comparison of time:
#   Rscript colony_step.R FOLDER
# reads rates.csv and days.csv, prints nanoseconds per member and day, writes the mean course to course_r.csv. The
# same algorithm, stages in the same order, in double precision, which is R's only one; luck by R's own generator.
# Members are rows, so a cohort is a column and lies together in memory.
folder <- commandArgs(trailingOnly = TRUE)[1]
MEMBERS <- 1024
WORKER <- 21; CAPPED <- 9; DRONE <- 24; DRONE_CAPPED <- 10; AGES <- 24
table_of <- read.csv(file.path(folder, "rates.csv"))
r <- as.list(setNames(table_of$value, table_of$key))
days <- read.csv(file.path(folder, "days.csv"))
days <- lapply(seq_len(nrow(days)), function(i) as.list(days[i, ]))
leaving_by_age <- pmin(pmax((0:(AGES - 1) - r$onset_first_age_days) / r$onset_ramp_days, 0), 1)

colonies <- function(n) {
  under <- 100 * 0.63 * min(1, 500 / 13000 / 0.5)
  trait <- c("laying_max", "forager_loss", "collecting", "swarming", "winter_loss", "heat_use",
             "mite_reproduction", "mite_invasion", "mite_immigration", "treatment_effect")
  season_end <- min(r$season_end, r$season_turn_light_h - 0.5)
  list(n = n, worker = matrix(500 / WORKER, n, WORKER), drone = matrix(0, n, DRONE),
       worker_mites = matrix(under / (WORKER - CAPPED), n, WORKER - CAPPED),
       drone_mites = matrix(0, n, DRONE - DRONE_CAPPED), hive = matrix(0, n, AGES), mites = rep(100 - under, n),
       old_hive = numeric(n), foragers = numeric(n), drones = numeric(n), winter = rep(13000, n),
       winter_harmed = numeric(n), winter_reared = numeric(n), winter_reared_infested = numeric(n),
       stores = rep(18, n), nectar = numeric(n), pollen = rep(0.75, n), undrawn_nest = rep(6, n),
       undrawn_super = numeric(n), queen = rep(TRUE, n), mated = rep(TRUE, n), alive = rep(TRUE, n),
       caged = rep(FALSE, n), queen_clock = rep(365, n), queen_age = rep(365, n), vigour = rep(1, n),
       cells = numeric(n), cell_age = numeric(n), of_swarm = rep(FALSE, n), luck_laying = numeric(n),
       luck_forage = numeric(n), luck_mites = numeric(n),
       # for how many mornings there may still be brood
       worker_brood_for = WORKER + 1, drone_brood_for = DRONE + 1,
       swarm_preparation = rep(1e9, n), swarmed = rep(1e9, n), cast = rep(1e9, n), queen_loss = rep(1e9, n),
       supersedure = rep(1e9, n), starvation = rep(1e9, n), robbing = rep(1e9, n), absconding = rep(1e9, n),
       death = rep(1e9, n), eggs = numeric(n), born = numeric(n), died = numeric(n), left = numeric(n),
       mites_emerged = numeric(n),
       t = c(lapply(r[trait], rep, n), list(season_end = rep(season_end, n))))
}

first_day <- function(noted, where, turn) {
  noted[where] <- pmin(noted[where], turn)
  noted
}

room_of <- function(c, d, brood, drone_brood) {
  honey <- c$stores + c$nectar
  cap <- pmax(d$super_combs - c$undrawn_super, 0) * d$honey_kg_per_comb
  super_kg <- pmin(cap, pmax(honey - r$nest_stores_kg, 0))
  nest <- pmax(d$nest_combs - c$undrawn_nest, 0) * d$cells_per_comb
  nest_kg <- honey - super_kg
  all_food <- nest_kg * d$cells_per_honey_kg + c$pollen * r$pollen_cells_per_kg
  food <- ifelse(c$undrawn_nest > 0, pmin(all_food, nest * r$new_nest_food_share), all_food)
  used <- brood + drone_brood * r$drone_cell_room + food
  homeless <- pmin((all_food - food) / d$cells_per_honey_kg, nest_kg)
  list(free = pmax(nest - used, 0), above = cap - super_kg, nest_kg = nest_kg, homeless = homeless)
}

# A part of everything that can fly leaves. share: one a colony that goes, or one for all.
leave_with_queen <- function(c, goes, share, bees) {
  at <- which(goes)
  stay <- rep_len(1 - share, length(at))
  c$hive[at, ] <- c$hive[at, ] * stay
  for (pool in c("old_hive", "foragers", "winter", "winter_harmed", "mites")) c[[pool]][at] <- c[[pool]][at] * stay
  c$drones[at] <- c$drones[at] * (1 - (1 - stay) * 0.5)
  leaving <- bees[at] * (1 - stay)
  c$stores[at] <- pmax(c$stores[at] - leaving * (r$swarm_honey_g_per_bee / 1000), 0)
  c$left[at] <- c$left[at] + leaving
  c
}

step <- function(c, d, turn) {
  n <- c$n
  score <- rnorm(n); score_forage <- rnorm(n); score_mites <- rnorm(n)
  luck_swarm <- runif(n); luck_queen <- runif(n)
  c$luck_laying <- c$luck_laying * r$vigour_keeps + score * d$laying_step
  c$luck_forage <- c$luck_forage * r$forage_keeps + score_forage * d$forage_step
  c$luck_mites <- c$luck_mites * r$mite_keeps + score_mites * d$mite_step

  # emerge
  w <- turn %% WORKER + 1; dr <- turn %% DRONE + 1; h <- turn %% AGES + 1
  wm <- turn %% (WORKER - CAPPED) + 1; dm <- turn %% (DRONE - DRONE_CAPPED) + 1
  cells <- c$worker[, w]; drone_cells <- c$drone[, dr]
  mothers <- c$worker_mites[, wm]; drone_mothers <- c$drone_mites[, dm]
  infested <- emerged <- numeric(n)
  if (any(mothers > 0) || any(drone_mothers > 0)) {
    load <- mothers / pmax(cells, 1)
    drone_load <- drone_mothers / pmax(drone_cells, 1)
    infested <- 1 - exp(-load)
    emerged <- mothers * pmax(c$t$mite_reproduction + d$mite_young_more, 0) / (1 + load * r$mite_crowding) +
      drone_mothers * r$mite_reproduction_drone / (1 + drone_load * r$mite_crowding)
  }
  born <- summer_born <- cells - cells * infested * r$infested_brood_dies
  if (d$lengthening) {
    c$winter_reared <- numeric(n); c$winter_reared_infested <- numeric(n)
  } else if (d$winter_share > 0) {
    winter_born <- born * d$winter_share
    harmed <- winter_born * infested
    c$winter_reared <- c$winter_reared + winter_born
    c$winter_reared_infested <- c$winter_reared_infested + harmed
    c$winter <- c$winter + winter_born - harmed
    c$winter_harmed <- c$winter_harmed + harmed
    summer_born <- born - winter_born
  }
  c$drones <- c$drones + drone_cells
  c$old_hive <- c$old_hive + c$hive[, h]
  c$hive[, h] <- summer_born
  c$worker[, w] <- 0
  c$drone[, dr] <- 0

  # count
  leaving <- leaving_by_age[(turn - 0:(AGES - 1)) %% AGES + 1]  # by place in the ring
  winter <- c$winter + c$winter_harmed
  hive <- rowSums(c$hive)
  old_for_field <- drop(c$hive %*% leaving)
  before <- hive + c$old_hive + c$foragers + winter
  larval <- (turn - 3:(CAPPED - 1)) %% WORKER + 1
  larvae <- brood <- drone_brood <- numeric(n)
  if (c$worker_brood_for > 0) {
    c$worker_brood_for <- c$worker_brood_for - 1
    larvae <- rowSums(c$worker[, larval])
    brood <- rowSums(c$worker)
  }
  if (c$drone_brood_for > 0) {
    c$drone_brood_for <- c$drone_brood_for - 1
    drone_brood <- rowSums(c$drone)
  }

  # age
  per_bee <- 1 / pmax(before, 1)
  burden <- pmin(c$mites * per_bee, 1) * r$mite_burden_loss_per_day
  keep <- 1 - r$hive_loss_per_day - burden
  recruit <- pmax(d$recruit_most - c$foragers * per_bee * d$recruit_checked, 0)
  keep_recruited <- keep * recruit
  c$hive <- c$hive * (keep - outer(keep_recruited, leaving))
  gone <- old_for_field * keep_recruited
  old <- c$old_hive * (1 - burden - r$old_hive_loss_per_day)
  old_gone <- old * recruit
  c$old_hive <- old - old_gone
  lost <- burden + r$forager_rest_loss_per_day + c$t$forager_loss * d$flight_hours
  c$foragers <- c$foragers * exp(-lost) + gone + old_gone
  rearing <- pmin(brood * per_bee, 1) * (1 - d$winter_idle_work) + d$winter_idle_work
  winter_loss <- c$t$winter_loss + rearing * d$winter_work_loss + burden
  c$winter <- c$winter * exp(-winter_loss)
  c$winter_harmed <- c$winter_harmed * exp(-winter_loss * r$harmed_winter_loss_times)
  c$drones <- c$drones * d$drones_keep
  winter <- c$winter + c$winter_harmed
  nurses <- hive * keep - gone + c$old_hive + winter
  bees <- nurses + c$foragers
  died <- before - bees
  c$left <- numeric(n)

  # bring home
  if (d$nectar_kg > 0 || d$pollen_kg > 0) {
    zeal <- (c$foragers + winter * r$winter_work_share) * 1e-4 * c$t$collecting
    nectar <- zeal * pmax(c$luck_forage + 1, 0) * d$nectar_kg
    room <- room_of(c, d, brood, drone_brood)
    below <- pmin(room$free * d$honey_kg_per_free_cell, pmax(d$nest_honey_kg - room$nest_kg, 0))
    c$nectar <- c$nectar + pmin(nectar, room$above + below)
    c$pollen <- pmin(c$pollen + zeal * d$pollen_kg, r$pollen_store_max_kg)
  }

  # eat
  eaters <- larvae + drone_brood * r$drone_larva_share
  need <- bees * d$bee_honey_kg + eaters * d$larva_honey_kg + c$t$heat_use * d$heat_honey_kg * c$alive
  from_nectar <- pmin(need, c$nectar)
  from_stores <- pmin(need - from_nectar, c$stores)
  missing <- need - from_nectar - from_stores
  ripe <- (c$nectar - from_nectar) * r$ripening_per_day
  c$nectar <- c$nectar - from_nectar - ripe
  c$stores <- c$stores - from_stores + ripe
  pollen <- c$pollen
  c$pollen <- pmax(pollen - eaters * d$larva_pollen_kg, 0)
  hungry <- which(missing > 0)
  if (length(hungry) > 0) {
    starving <- missing[hungry] / pmax(need[hungry], 1e-6)
    stay <- 1 - starving * r$starving_loss_per_day
    c$hive[hungry, ] <- c$hive[hungry, ] * stay
    for (pool in c("old_hive", "foragers", "winter", "winter_harmed", "drones")) {
      c[[pool]][hungry] <- c[[pool]][hungry] * stay
    }
    c$worker[hungry, larval] <- c$worker[hungry, larval] * (1 - starving * 0.5)
    died[hungry] <- died[hungry] + bees[hungry] * (1 - stay)
    bees[hungry] <- bees[hungry] * stay
    nurses[hungry] <- nurses[hungry] * stay
    c$starvation <- first_day(c$starvation, hungry[c$alive[hungry] & starving > 0.5], turn)
  }

  # be robbed
  if (d$robbers) {
    weak <- bees < r$rob_below_bees & c$stores > 0
    if (any(weak)) {
      taken <- pmin((1 - bees / r$rob_below_bees) * d$rob_kg, c$stores) * weak
      c$stores <- c$stores - taken
      c$robbing <- first_day(c$robbing, taken > 0.05, turn)
    }
  }

  # draw comb
  if (d$draw_combs_per_bee > 0 && (any(c$undrawn_nest > 0) || any(c$undrawn_super > 0))) {
    homeless <- pmin(room_of(c, d, brood, drone_brood)$homeless, c$stores)
    built <- bees * d$draw_combs_per_bee * pmin(pmax(c$nectar, homeless) / r$flow_kg_per_day, 1)
    nest <- pmin(built, c$undrawn_nest)
    top <- pmin(built - nest, c$undrawn_super)
    c$undrawn_nest <- c$undrawn_nest - nest
    c$undrawn_super <- c$undrawn_super - top
    wax <- (nest + top) * r$comb_honey_kg
    from_nectar <- pmin(wax, c$nectar)
    c$nectar <- c$nectar - from_nectar
    c$stores <- c$stores - pmin(wax - from_nectar, homeless)
  }

  # lay
  eggs <- numeric(n)
  lays <- c$queen & c$mated & c$queen_clock > 2.5 & !c$caged
  years <- c$queen_age / 365
  if (d$laying > 0 || d$swarm_rate > 0) free <- room_of(c, d, brood, drone_brood)$free
  if (d$laying > 0) {
    age <- pmax(years - r$laying_falls_from_years, 0)
    power <- c$t$laying_max * c$vigour * pmax(1 + c$luck_laying - age * r$laying_falls_per_year, 0)
    nursed <- nurses / (nurses + r$half_laying_bees)
    fed <- pollen / (pollen + r$pollen_half_kg) * pmin((c$stores + c$nectar) / r$laying_stores_kg, 1)
    limit <- pmin(free, pmax(nurses * r$care_cells_per_bee - brood, 0)) / r$egg_wait_days
    season <- if (d$lengthening) d$laying else pmin(pmax((d$light - c$t$season_end) / pmax(d$season_turn - c$t$season_end, 0.5), 0), 1) * d$warm * d$season_peak
    eggs <- pmin(power * nursed * fed * season, limit) * lays
    males <- if (d$drone_share > 0) bees / (bees + r$drone_half_bees) * d$drone_share * eggs else numeric(n)
    drone_layer <- c$queen & !c$mated & c$queen_clock > 28 & !c$caged
    lays_drones <- any(drone_layer)
    if (lays_drones) males <- males + pmin(d$drone_layer_eggs, limit) * drone_layer
    c$worker[, w] <- eggs
    c$drone[, dr] <- males
    c$worker_brood_for <- WORKER + 1
    if (d$drone_share > 0 || lays_drones) c$drone_brood_for <- DRONE + 1
    brood <- brood + eggs
  }

  # mites enter
  into_drone_cells <- c$drone[, (turn - DRONE_CAPPED) %% DRONE + 1] * r$drone_cell_preference
  capped <- c$worker[, (turn - CAPPED) %% WORKER + 1] + into_drone_cells
  entering <- into_drones <- numeric(n)
  if (any(capped > 0)) {
    plenty <- pmin(capped / (pmax(bees, 1) * r$usual_cells_per_bee), r$cells_per_bee_most)
    entering <- c$mites * (1 - exp(-c$t$mite_invasion * plenty * pmax(1 + c$luck_mites, 0)))
    into_drones <- entering * (into_drone_cells / pmax(capped, 1))
  }
  c$worker_mites[, wm] <- entering - into_drones
  c$drone_mites[, dm] <- into_drones
  broodless <- 1 - brood / (brood + r$mite_brood_half_cells)
  own_loss <- r$mite_loss_per_day + broodless * (r$mite_winter_loss_per_day - r$mite_loss_per_day)
  loss <- pmax(own_loss, broodless * died * per_bee)  # with the bees that carry them
  c$mites <- (c$mites - entering) * (1 - loss) + emerged
  if (d$mites_in > 0) c$mites <- c$mites + c$t$mite_immigration * d$mites_in * c$alive
  c$mites <- pmin(c$mites, bees * r$mites_per_bee_most)

  # treat
  if (d$kill_on_bees > 0) c$mites <- c$mites * exp(-c$t$treatment_effect * d$kill_on_bees)
  if (d$kill_under_cappings > 0) {
    stay <- exp(-c$t$treatment_effect * d$kill_under_cappings)
    c$worker_mites <- c$worker_mites * stay
    c$drone_mites <- c$drone_mites * stay
  }

  # prepare to swarm
  has <- c$cells > 0
  starts <- logical(n)
  if (d$swarm_rate > 0) {
    crowded_cells <- pmax(d$nest_combs - c$undrawn_nest, 1) * (d$cells_per_comb * r$crowded_free_share)
    crowded <- 1 - pmin(free / crowded_cells, 1)
    full <- pmin(pmax(bees / max(d$bees_at_home, 1) - r$full_hive_from_share, 0), 1)
    old <- pmin(years, 3) * r$swarm_age_weight + (1 - r$swarm_age_weight)
    inclined <- c$t$swarming * old * (crowded * r$crowded_weight + full)
    able <- bees > r$swarm_min_bees & lays & !has
    starts <- able & luck_swarm < 1 - exp(-inclined * d$swarm_rate)
  }
  if (any(has | starts)) {
    age <- c$cell_age + has
    tired <- luck_swarm < r$give_up_per_day & age < 8
    gives_up <- c$of_swarm & has & c$queen & (tired | age > 14.5)
    c$cells <- ifelse(starts, r$swarm_cells, ifelse(gives_up, 0, c$cells))
    c$cell_age <- ifelse(gives_up | starts, 0, age)
    c$of_swarm <- (c$of_swarm & !gives_up) | starts
    c$swarm_preparation <- first_day(c$swarm_preparation, c$of_swarm & c$cell_age > 2.5, turn)
  }

  # swarm
  if (d$swarm_weather) {
    goes <- c$of_swarm & c$cell_age > 7.5 & lays
    if (any(goes)) {
      c <- leave_with_queen(c, goes, pmin(pmax(r$swarm_share + score_forage[goes] * 0.05, 0), 1), bees)
      bees <- bees - c$left
      c$queen <- c$queen & !goes
      c$swarmed <- first_day(c$swarmed, goes, turn)
    }
  }

  # change the queen
  c$queen_clock <- c$queen_clock + c$queen
  years <- years + r$queen_age_from_years
  old_queen <- c$queen & c$mated
  fails <- years * r$queen_fails_per_day
  lost <- old_queen & luck_queen < fails
  supersedes <- old_queen & c$cells < 1 & luck_queen > 1 - years * d$supersedes
  c$queen_age <- c$queen_age + 1
  if (any(c$cells > 0 | (c$alive & !old_queen) | lost | supersedes)) {
    spent <- lost & luck_queen < fails * r$queen_fails_as_drone_layer
    gone <- c$queen & !c$mated & c$queen_clock > 28 & luck_queen < r$drone_layer_lost_per_day
    lost <- lost | gone
    c$queen <- c$queen & (spent | !lost)
    c$mated <- c$mated & !spent
    c$queen_clock[spent] <- 29
    c$cells <- c$cells + supersedes * r$supersede_cells
    c$cell_age[supersedes] <- 0
    young <- rowSums(c$worker[, (turn - 1:4) %% WORKER + 1]) + eggs
    raises <- !c$queen & c$cells < 1 & young > 10 & c$alive
    c$cells <- c$cells + raises * r$emergency_cells
    c$cell_age[raises] <- 4
    hatches <- c$cells > 0 & c$cell_age > 15.5 & c$alive & !(c$queen & c$of_swarm)
    if (d$swarm_weather) {
      casts <- hatches & c$of_swarm & bees > r$cast_min_bees & luck_swarm < r$cast_odds
      if (any(casts)) {
        c <- leave_with_queen(c, casts, r$cast_share, bees)
        bees[casts] <- bees[casts] * (1 - r$cast_share)
        c$cast <- first_day(c$cast, casts, turn)
      }
    }
    c$queen <- c$queen | hatches
    c$mated <- c$mated & !hatches
    c$of_swarm <- c$of_swarm & !hatches
    c$caged <- c$caged & !hatches
    for (what in c("queen_clock", "cells", "cell_age", "queen_age")) c[[what]][hatches] <- 0
    c$vigour[hatches] <- 1 + score[hatches] * 0.1
    if (d$mating_weather) {
      flies <- c$queen & !c$mated & c$queen_clock > 4.5 & c$queen_clock < 28 & !c$caged
      mates <- flies & luck_queen < d$mates_below
      not_back <- flies & !mates & luck_queen < r$mating_odds_per_day
      c$mated <- c$mated | mates
      c$queen_clock[mates] <- 0
      c$queen <- c$queen & !not_back
      lost <- lost | not_back
    }
    c$mated <- c$mated & c$queen
    c$caged <- c$caged & c$queen
    c$queen_clock <- c$queen_clock * c$queen
    c$queen_loss <- first_day(c$queen_loss, lost, turn)
    c$supersedure <- first_day(c$supersedure, supersedes, turn)
  }

  # abscond: left without food on a day fit to fly
  if (d$swarm_weather) {
    goes <- c$stores + c$nectar < r$abscond_stores_kg & c$alive & luck_swarm > 1 - r$abscond_per_day
    if (any(goes)) {
      c$left[goes] <- c$left[goes] + bees[goes]
      bees[goes] <- 0
      c$absconding <- first_day(c$absconding, goes, turn)
    }
  }

  # close the day
  ended <- c$alive & !(bees > r$too_few_bees)
  if (any(ended)) {
    died <- died + bees * ended
    for (ring in c("worker", "drone", "worker_mites", "drone_mites", "hive")) c[[ring]][ended, ] <- 0
    for (pool in c("old_hive", "foragers", "winter", "winter_harmed", "drones", "mites", "cells", "cell_age",
                   "queen_clock", "queen_age", "vigour")) c[[pool]][ended] <- 0
    for (what in c("queen", "mated", "caged", "of_swarm", "alive")) c[[what]][ended] <- FALSE
    c$death <- first_day(c$death, ended, turn)
  }
  c$eggs <- eggs; c$born <- born; c$died <- died; c$mites_emerged <- emerged
  c
}

mean_row <- function(c) {
  laying <- c$queen & c$mated & c$queen_clock >= 3 & !c$caged
  under <- rowSums(c$worker_mites) + rowSums(c$drone_mites)
  bees <- rowSums(c$hive) + c$old_hive + c$foragers + c$winter + c$winter_harmed
  shown <- list(bees, rowSums(c$worker), rowSums(c$drone), c$drones, c$stores + c$nectar, c$pollen, c$mites + under,
                c$mites, c$undrawn_nest + c$undrawn_super, laying,
                ifelse(c$cell_age >= 3 & c$of_swarm, c$cells, 0), c$alive)
  unlist(lapply(shown, function(x) c(mean(x), sd(x) / sqrt(c$n))))  # mean and its standard error
}

live <- function(members) {
  c <- colonies(members)
  for (turn in seq_along(days)) c <- step(c, days[[turn]], turn)
  c
}

set.seed(1)
names <- c("bees", "brood_cells", "drone_brood", "drones", "stores_kg", "pollen_kg", "mites", "mites_on_bees",
           "undrawn_combs", "queen_laying", "swarm_cells", "alive")
names <- as.vector(rbind(names, paste0(names, "_se")))
course <- matrix(0, length(days), length(names), dimnames = list(NULL, names))
c <- colonies(MEMBERS)
for (turn in seq_along(days)) {
  c <- step(c, days[[turn]], turn)
  course[turn, ] <- mean_row(c)
}
write.csv(data.frame(day = seq_along(days), course), file.path(folder, "course_r.csv"), row.names = FALSE)
# As for NumPy: the better of two sizes counts.
best <- sapply(c(MEMBERS, 8 * MEMBERS), function(members) {
  ns <- min(replicate(3, sum(system.time(live(members))[1:2]))) * 1e9 / (members * length(days))
  cat(sprintf("r_%d %.1f\n", members, ns))
  ns
})
cat(sprintf("r %.1f\n", min(best)))
