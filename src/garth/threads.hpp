// Work shared over threads in a way that cannot change a result: task i writes only to its own place.
#pragma once

#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace beegarth::garth {

template <class Task>
void for_each_index(std::size_t count, int threads, const Task& task) {
  std::atomic<std::size_t> next{0};
  std::exception_ptr first_error;
  std::mutex guard;
  const auto work = [&] {
    for (std::size_t i = next++; i < count; i = next++) {
      try {
        task(i);
      } catch (...) {
        const std::scoped_lock lock(guard);
        if (!first_error) first_error = std::current_exception();
      }
    }
  };
  {
    std::vector<std::jthread> crew;
    for (int t = 1; t < threads && static_cast<std::size_t>(t) < count; ++t) crew.emplace_back(work);
    work();
  }
  if (first_error) std::rethrow_exception(first_error);
}

}  // namespace beegarth::garth
