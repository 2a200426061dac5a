// What is believed of every living colony: history and weather go in, outlooks come out.
#pragma once

#include <map>
#include <memory>
#include <vector>

#include "belief/forecast.hpp"
#include "belief/suppose.hpp"
#include "facts/outlook.hpp"
#include "garth/session.hpp"
#include "garth/weather.hpp"

namespace beegarth::garth {

// The weather of every site from the first day any of its colonies is followed to the horizon.
using Skies = std::map<SiteId, SiteWeather>;
Expected<Skies> skies_of(const Session& session, Date horizon);

struct BelieveOptions {
  std::optional<ColonyId> only;  // one colony instead of all
  Date horizon;
  bool explain = true;
  bool doubt = true;  // ask of looks that fit badly whether another date or colony was meant (costs time)
};

// In order of colony key; colonies that have ended, and homeless ones that were not asked for by name, are
// left out.
Expected<std::vector<facts::Outlook>> outlooks_of(const Session& session, const Skies& skies,
                                                  const BelieveOptions& options);

// A look at a living colony that is likelier written wrongly than true, and how else it may have been meant.
struct DoubtedLook {
  ColonyId colony;
  facts::Reason reason;
};

// Of all living colonies, in order of colony key. Asked apart from outlooks where these must be quick.
Expected<std::vector<DoubtedLook>> doubted_looks(const Session& session, const Skies& skies);

// What is expected of one living colony at looks from today to the skies' horizon.
struct ForecastWish {
  ColonyId colony;
  std::vector<belief::LookToCome> looks;
};

// In the order of the wishes.
Expected<std::vector<belief::Forecast>> forecasts_of(const Session& session, const Skies& skies,
                                                     const std::vector<ForecastWish>& wishes);

// What would come of one living colony under other deeds, to the day `until`.
struct Followed {
  belief::Supposed supposed;
  std::vector<belief::Way> ways;                              // those that were followed
  std::vector<std::pair<std::string, Problem>> not_followed;  // by name: nothing in a colony, a day outside
};
Expected<Followed> supposed_of(const Session& session, const Skies& skies, const ColonyId& colony, Date until,
                               std::vector<belief::Way> ways);

// The next last day of March; of September in the south.
Date winter_end(Date today, double latitude_deg);

// The last day that outlooks follow: 60 days, the end of the season in which winter bees are reared, for the
// question of mites, and from ten weeks before that on the end of the winter, for the question of death.
Date last_followed(Date today, double latitude_deg);

// The site of a living colony; empty where its hive was never entered.
SiteId site_of_colony(const book::State& state, const book::ColonyState& colony);

// Colonies that go on but stand in no hive at an open site: nothing can be reckoned for them.
std::vector<ColonyId> homeless_colonies(const book::State& state);
// Why one of them is: a site or hive that was entered for a later day is not there yet.
struct Homeless {
  std::string begins;  // "its site 'Yard' begins only on 2026-07-01"; empty where nothing comes
  std::string remedy;
  std::string because() const;  // ": ..." after a sentence
};
Homeless why_homeless(const Session& session, const ColonyId& colony);

}  // namespace beegarth::garth
