// Rounds over several days on the published instances: `bench_orienteering FOLDER/ [effort] [seed]` prints a
// table.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "published/orienteering_instances.hpp"

int main(int count, char** words) {
  using namespace beegarth;
  if (count < 2) {
    std::puts("give the folder with toptw/, mctopmtw/ and op_tsiligirides/, with a slash at its end");
    return 2;
  }
  std::puts(
      "| instance | best known | ours | gap % | bound | proven | seconds |\n|---|---|---|---|---|---|---|");
  double gaps = 0, worst = -100;
  const auto instances = published::instances(words[1]);
  for (auto instance : instances) {
    if (count > 2) instance.question.effort = std::atoi(words[2]);
    if (count > 3) instance.question.seed = static_cast<std::uint64_t>(std::atoll(words[3]));
    const std::clock_t begun = std::clock();  // of the processor: one thread does all
    const auto answer = work::rounds::best_rounds(instance.question);
    const double taken = static_cast<double>(std::clock() - begun) / CLOCKS_PER_SEC;
    if (!answer) {
      std::printf("%s: %s\n", instance.name.c_str(), one_line(answer.problem()).c_str());
      return 1;
    }
    const double gap = 100 * (1 - answer->score / instance.best_known);
    gaps += gap;
    worst = std::max(worst, gap);
    std::printf("| %s | %.0f%s | %.0f | %.2f | %.0f | %s | %.2f |\n", instance.name.c_str(),
                instance.best_known, instance.optimum ? " (optimum)" : "", answer->score, gap,
                answer->bound.value_or(-1), answer->proven_optimal ? "yes" : "no", taken);
  }
  std::printf("mean gap %.2f %%, worst %.2f %%\n", gaps / static_cast<double>(instances.size()), worst);
  return 0;
}
