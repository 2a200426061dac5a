#include "base/date.hpp"
int main() {
  return beegarth::Date{}.day_number();
}
