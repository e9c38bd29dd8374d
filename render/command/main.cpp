#include <iostream>
#include <string>
#include <vector>

#include "render/command/run.h"

int main(int argc, char** argv) {
  std::ios::sync_with_stdio(false);
  const std::vector<std::string> arguments(argv + 1, argv + argc);
  return stowpath::run(arguments, stowpath::this_terminal(), std::cin, std::cout, std::cerr);
}
