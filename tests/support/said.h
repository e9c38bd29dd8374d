#pragma once

#include <sstream>
#include <string>
#include <vector>

#include "render/command/run.h"

namespace stowpath::testing {

/// What the command says and how it ends.
struct Said {
  int code = 0;
  std::string out, err;
};

/// Runs the command within the test.
/// @param input   what stands on standard input
/// @param colour  whether the terminal shows colours
inline Said said(const std::vector<std::string>& arguments, const std::string& input = "", bool colour = false) {
  std::istringstream in(input);
  std::ostringstream out, err;
  const int code = run(arguments, {colour}, in, out, err);
  return {code, out.str(), err.str()};
}

}  // namespace stowpath::testing
