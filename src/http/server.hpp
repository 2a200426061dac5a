// The HTTP face on this machine alone: it listens on the loopback address and on nothing else.
#pragma once

#include <memory>

#include "http/api.hpp"

namespace beegarth::http {

class Server {
 public:
  explicit Server(Api api);
  ~Server();
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  // Takes the port, or any free one for 0, and says which. A port in use is a Problem of kind wrong_use.
  Expected<int> bind(int port);
  // Serves until stop() is called from another thread or a signal handler's helper. Call bind first.
  void run();
  void stop();

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace beegarth::http
