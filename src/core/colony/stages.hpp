// Private. How long brood, hive bees and queens stay in each stage, and so how long the rings are.
#pragma once

namespace beegarth::colony {

// Days in each stage. Worker 3, 6, 12; drone 3, 6.5, 14.5, here in whole days: stage table of "Honey Bee
// Biology".
inline constexpr int egg_days = 3;
inline constexpr int worker_capping_age = 9;
inline constexpr int worker_days = 21;
inline constexpr int worker_capped_days = worker_days - worker_capping_age;
inline constexpr int drone_capping_age = 10;
inline constexpr int drone_days = 24;
inline constexpr int drone_capped_days = drone_days - drone_capping_age;
inline constexpr int hive_ages = 24;  // older bees that have not left for the field are kept together
// Queen cells, days since the egg was laid: encyclopedia page "Queen Bee - Development".
inline constexpr float cell_charged_age = 3;
inline constexpr float cell_sealed_age = 8;
inline constexpr float cell_emerging_age = 16;
inline constexpr float emergency_larva_age = 4;   // 24 h old larva
inline constexpr float virgin_mature_days = 5;    // Heidinger et al. 2014
inline constexpr float virgin_too_old_days = 28;  // from memory: three to four weeks
inline constexpr float mated_to_laying_days = 3;  // queen timeline page: 2-3

}  // namespace beegarth::colony
