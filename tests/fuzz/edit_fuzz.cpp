#include <cstddef>
#include <cstdint>
#include <string_view>

#include "tests/fuzz/checks.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  stowpath::testing::check_edit({reinterpret_cast<const char*>(data), size});
  return 0;
}
