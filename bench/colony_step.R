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
  trait <- c("laying_max", "forager_loss", "collecting", "swarming", "winter_loss", "mite_reproduction",
             "mite_invasion", "mite_immigration", "treatment_effect")
  list(n = n, worker = matrix(500 / WORKER, n, WORKER), drone = matrix(0, n, DRONE),
       worker_mites = matrix(under / (WORKER - CAPPED), n, WORKER - CAPPED),
       drone_mites = matrix(0, n, DRONE - DRONE_CAPPED), hive = matrix(0, n, AGES), mites = rep(100 - under, n),
       old_hive = numeric(n), foragers = numeric(n), drones = numeric(n), winter = rep(13000, n),
       winter_harmed = numeric(n), winter_reared = numeric(n), winter_reared_infested = numeric(n),
       stores = rep(18, n), nectar = numeric(n), pollen = rep(0.75, n), undrawn_nest = rep(6, n),
       undrawn_super = numeric(n), queen = rep(TRUE, n), mated = rep(TRUE, n), alive = rep(TRUE, n),
       caged = rep(FALSE, n), queen_clock = rep(365, n), queen_age = rep(365, n), vigour = rep(1, n),
       cells = numeric(n), cell_age = numeric(n), of_swarm = rep(FALSE, n), luck_laying = numeric(n),
       luck_forage = numeric(n), luck_mites = numeric(n), preparation = rep(1e9, n), swarmed = rep(1e9, n),
       queen_loss = rep(1e9, n), starvation = rep(1e9, n), death = rep(1e9, n), eggs = numeric(n),
       born = numeric(n), died = numeric(n), t = lapply(r[trait], rep, n))
}

room_of <- function(c, d, brood, drone_brood) {
  honey <- c$stores + c$nectar
  cap <- pmax(d$super_combs - c$undrawn_super, 0) * d$honey_kg_per_comb
  super_kg <- pmin(cap, pmax(honey - r$nest_stores_kg, 0))
  nest <- pmax(d$nest_combs - c$undrawn_nest, 0) * d$cells_per_comb
  used <- brood + drone_brood * 1.4 + (honey - super_kg) * d$cells_per_honey_kg + c$pollen * r$pollen_cells_per_kg
  list(free = pmax(nest - used, 0), above = cap - super_kg)
}
lays <- function(c) c$queen & c$mated & c$queen_clock > 2.5 & !c$caged

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
  load <- mothers / pmax(cells, 1)
  drone_load <- drone_mothers / pmax(drone_cells, 1)
  infested <- 1 - exp(-load)
  emerged <- mothers * c$t$mite_reproduction / (1 + load * r$mite_crowding) +
    drone_mothers * r$mite_reproduction_drone / (1 + drone_load * r$mite_crowding)
  born <- cells - cells * infested * r$infested_brood_dies
  winter_born <- born * d$winter_share
  if (d$lengthening) {
    c$winter_reared <- numeric(n); c$winter_reared_infested <- numeric(n)
  } else if (d$winter_share > 0) {
    harmed <- winter_born * infested
    c$winter_reared <- c$winter_reared + winter_born
    c$winter_reared_infested <- c$winter_reared_infested + harmed
    c$winter <- c$winter + winter_born - harmed
    c$winter_harmed <- c$winter_harmed + harmed
  }
  c$drones <- c$drones + drone_cells
  c$old_hive <- c$old_hive + c$hive[, h]
  c$hive[, h] <- born - winter_born
  c$worker[, w] <- 0
  c$drone[, dr] <- 0

  # count
  leaving <- leaving_by_age[(turn - 0:(AGES - 1)) %% AGES + 1]  # by place in the ring
  winter <- c$winter + c$winter_harmed
  hive <- rowSums(c$hive)
  old_for_field <- drop(c$hive %*% leaving)
  before <- hive + c$old_hive + c$foragers + winter
  larvae <- rowSums(c$worker[, (turn - 3:(CAPPED - 1)) %% WORKER + 1])
  brood <- rowSums(c$worker)
  drone_brood <- rowSums(c$drone)

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
  rearing <- pmin(brood * per_bee, 1) * 0.85 + 0.15
  winter_loss <- c$t$winter_loss + rearing * d$winter_work_loss + burden
  c$winter <- c$winter * exp(-winter_loss)
  c$winter_harmed <- c$winter_harmed * exp(-winter_loss * r$harmed_winter_loss_times)
  c$drones <- c$drones * d$drones_keep
  winter <- c$winter + c$winter_harmed
  nurses <- hive * keep - gone + c$old_hive + winter
  bees <- nurses + c$foragers
  died <- before - bees

  # bring home
  if (d$nectar_kg > 0 || d$pollen_kg > 0) {
    zeal <- (c$foragers + winter * r$winter_work_share) * 1e-4 * c$t$collecting * pmax(c$luck_forage + 1, 0)
    room <- room_of(c, d, brood, drone_brood)
    c$nectar <- c$nectar + pmin(zeal * d$nectar_kg, room$above + room$free * d$honey_kg_per_free_cell)
    c$pollen <- pmin(c$pollen + zeal * d$pollen_kg, r$pollen_store_max_kg)
  }

  # eat
  eaters <- larvae + drone_brood * 0.45
  need <- bees * d$bee_honey_kg + eaters * d$larva_honey_kg + d$heat_honey_kg * c$alive
  from_nectar <- pmin(need, c$nectar)
  from_stores <- pmin(need - from_nectar, c$stores)
  missing <- need - from_nectar - from_stores
  ripe <- (c$nectar - from_nectar) * r$ripening_per_day
  c$nectar <- c$nectar - from_nectar - ripe
  c$stores <- c$stores - from_stores + ripe
  pollen <- c$pollen
  c$pollen <- pmax(pollen - eaters * d$larva_pollen_kg, 0)
  if (any(missing > 0)) {
    starving <- missing / pmax(need, 1e-6)
    stay <- 1 - starving * r$starving_loss_per_day
    c$hive <- c$hive * stay
    for (pool in c("old_hive", "foragers", "winter", "winter_harmed", "drones")) c[[pool]] <- c[[pool]] * stay
    larval <- (turn - 3:(CAPPED - 1)) %% WORKER + 1
    c$worker[, larval] <- c$worker[, larval] * (1 - starving * 0.5)
    died <- died + bees * (1 - stay)
    bees <- bees * stay
    nurses <- nurses * stay
    hit <- c$alive & starving > 0.5
    c$starvation[hit] <- pmin(c$starvation[hit], turn)
  }

  # draw comb
  if (d$draw_combs_per_bee > 0) {
    built <- bees * d$draw_combs_per_bee * pmin(c$nectar / r$flow_kg_per_day, 1)
    nest <- pmin(built, c$undrawn_nest)
    top <- pmin(built - nest, c$undrawn_super)
    c$undrawn_nest <- c$undrawn_nest - nest
    c$undrawn_super <- c$undrawn_super - top
    c$nectar <- pmax(c$nectar - (nest + top) * r$comb_honey_kg, 0)
  }

  # lay
  eggs <- numeric(n)
  if (d$laying > 0 || d$swarm_rate > 0) free <- room_of(c, d, brood, drone_brood)$free
  if (d$laying > 0) {
    age <- pmax(c$queen_age / 365 - 1.5, 0)
    power <- c$t$laying_max * c$vigour * pmax(1 + c$luck_laying - age * r$laying_falls_per_year, 0)
    nursed <- nurses / (nurses + r$half_laying_bees)
    fed <- pollen / (pollen + r$pollen_half_kg)
    limit <- pmin(free, pmax(nurses * r$care_cells_per_bee - brood, 0)) / r$egg_wait_days
    eggs <- pmin(power * nursed * fed * d$laying, limit) * lays(c)
    drone_layer <- c$queen & !c$mated & c$queen_clock > 28 & !c$caged
    males <- bees / (bees + r$drone_half_bees) * d$drone_share * eggs
    if (any(drone_layer)) males <- males + pmin(d$drone_layer_eggs, limit) * drone_layer
    c$worker[, w] <- eggs
    c$drone[, dr] <- males
    brood <- brood + eggs
  }

  # mites enter
  into_drone_cells <- c$drone[, (turn - DRONE_CAPPED) %% DRONE + 1] * r$drone_cell_preference
  capped <- c$worker[, (turn - CAPPED) %% WORKER + 1] + into_drone_cells
  plenty <- pmin(capped / (pmax(bees, 1) * r$usual_cells_per_bee), 2)
  entering <- c$mites * (1 - exp(-c$t$mite_invasion * plenty * pmax(1 + c$luck_mites, 0)))
  into_drones <- entering * (into_drone_cells / pmax(capped, 1))
  c$worker_mites[, wm] <- entering - into_drones
  c$drone_mites[, dm] <- into_drones
  loss <- r$mite_winter_loss_per_day + brood / (brood + 1000) * (r$mite_loss_per_day - r$mite_winter_loss_per_day)
  c$mites <- (c$mites - entering) * (1 - loss) + emerged + c$t$mite_immigration * d$mites_in * c$alive

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
    full <- pmin(pmax(bees / max(d$bees_at_home, 1) - 0.4, 0), 1)
    inclined <- c$t$swarming * (pmin(c$queen_age / 365, 3) * 0.5 + 0.5) * (crowded * 0.7 + full)
    able <- bees > r$swarm_min_bees & lays(c) & !has
    starts <- able & luck_swarm < 1 - exp(-inclined * d$swarm_rate)
  }
  if (any(has | starts)) {
    age <- c$cell_age + has
    tired <- luck_swarm < r$give_up_per_day & age < 8
    gives_up <- c$of_swarm & has & c$queen & (tired | age > 14.5)
    c$cells <- ifelse(starts, r$swarm_cells, ifelse(gives_up, 0, c$cells))
    c$cell_age <- ifelse(gives_up | starts, 0, age)
    c$of_swarm <- (c$of_swarm & !gives_up) | starts
    hit <- c$of_swarm & c$cell_age > 2.5
    c$preparation[hit] <- pmin(c$preparation[hit], turn)
  }

  # swarm
  if (d$swarm_weather) {
    goes <- c$of_swarm & c$cell_age > 7.5 & lays(c)
    if (any(goes)) {
      away <- pmin(pmax(r$swarm_share + score_forage * 0.05, 0), 1) * goes
      stay <- 1 - away
      c$hive <- c$hive * stay
      for (pool in c("old_hive", "foragers", "winter", "winter_harmed", "mites")) c[[pool]] <- c[[pool]] * stay
      c$drones <- c$drones * (1 - away * 0.5)
      c$stores <- pmax(c$stores - bees * away * (r$swarm_honey_g_per_bee / 1000), 0)
      c$queen <- c$queen & !goes
      bees <- bees * stay
      c$swarmed[goes] <- pmin(c$swarmed[goes], turn)
    }
  }

  # change the queen
  c$queen_clock <- c$queen_clock + c$queen
  years <- c$queen_age / 365 + 0.3
  old_queen <- c$queen & c$mated
  lost <- old_queen & luck_queen < years * r$queen_fails_per_day
  supersedes <- old_queen & c$cells < 1 & luck_queen > 1 - years * d$supersedes
  c$queen_age <- c$queen_age + 1
  if (any(c$cells > 0 | (c$alive & !old_queen) | lost | supersedes)) {
    c$queen <- c$queen & !lost
    c$cells <- c$cells + supersedes * r$supersede_cells
    c$cell_age[supersedes] <- 0
    young <- rowSums(c$worker[, (turn - 1:4) %% WORKER + 1]) + eggs
    raises <- !c$queen & c$cells < 1 & young > 10 & c$alive
    c$cells <- c$cells + raises * r$emergency_cells
    c$cell_age[raises] <- 4
    hatches <- c$cells > 0 & c$cell_age > 15.5 & c$alive & !(c$queen & c$of_swarm)
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
    c$queen_loss[lost] <- pmin(c$queen_loss[lost], turn)
  }

  # close the day
  ended <- c$alive & !(bees > r$too_few_bees)
  if (any(ended)) {
    died <- died + bees * ended
    for (ring in c("worker", "drone", "worker_mites", "drone_mites", "hive")) c[[ring]][ended, ] <- 0
    for (pool in c("old_hive", "foragers", "winter", "winter_harmed", "drones", "mites", "cells", "cell_age",
                   "queen_clock", "queen_age", "vigour")) c[[pool]][ended] <- 0
    for (what in c("queen", "mated", "caged", "of_swarm", "alive")) c[[what]][ended] <- FALSE
    c$death[ended] <- pmin(c$death[ended], turn)
  }
  c$eggs <- eggs; c$born <- born; c$died <- died
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
