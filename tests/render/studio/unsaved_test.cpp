#include "render/studio/unsaved.h"

#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <thread>

#include "tests/support/scratch_folder.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

constexpr const char* kSubject = "/home/anna/loft.yaml";

std::string only_file(const ScratchFolder& folder, const std::string& ending) {
  for (const auto& entry : std::filesystem::directory_iterator(folder.file("")))
    if (entry.path().string().ends_with(ending)) return entry.path().string();
  return "";
}

void write(const std::string& file, const std::string& bytes) { std::ofstream(file, std::ios::binary) << bytes; }

// What a writer leaves who is killed while it writes.
std::string long_text(int number) { return std::string(200'000, static_cast<char>('a' + number % 26)) + "\n"; }

[[noreturn]] void keep_for_ever(const std::string& folder) {
  Unsaved unsaved(folder, kSubject);
  for (int k = 0;; ++k) unsaved.keep(long_text(k));
}

}  // namespace

TEST_CASE("unsaved work: what was kept last is there for the next window, until it is forgotten", "[studio][unsaved]") {
  const ScratchFolder folder;
  {
    Unsaved unsaved(folder.file("state"), kSubject);
    CHECK_FALSE(unsaved.left());
    unsaved.keep("first\n");
    unsaved.keep("second\nof two lines");
    CHECK(unsaved.trouble().empty());
  }
  Unsaved next(folder.file("state"), kSubject);
  const auto left = next.left();
  REQUIRE(left);
  CHECK(left->text == "second\nof two lines");
  CHECK(std::abs(std::difftime(std::time(nullptr), left->when)) < 60.0);
  CHECK_FALSE(Unsaved(folder.file("state"), "/home/anna/other.yaml").left());
  next.forget();
  CHECK_FALSE(next.left());
}

TEST_CASE("unsaved work: two windows on one scene keep theirs apart", "[studio][unsaved]") {
  const ScratchFolder folder;
  {
    Unsaved one(folder.file("state"), kSubject), two(folder.file("state"), kSubject);
    one.keep("one");
    two.keep("two");
    CHECK(one.left()->text == "one");
    CHECK(two.left()->text == "two");
    one.forget();
  }
  Unsaved next(folder.file("state"), kSubject);
  REQUIRE(next.left());
  CHECK(next.left()->text == "two");
}

TEST_CASE("unsaved work: cut short anywhere or full of something else, it is put aside", "[studio][unsaved]") {
  const ScratchFolder folder;
  {
    Unsaved unsaved(folder.file(""), kSubject);
    unsaved.keep("name: loft\nwidth: 560\n");
  }
  const std::string file = only_file(folder, ".unsaved"), whole = content(file);
  const auto left = [&](const std::string& bytes) {
    write(file, bytes);
    Unsaved unsaved(folder.file(""), kSubject);
    const auto found = unsaved.left();
    CHECK(unsaved.trouble().empty() == found.has_value());
    if (!found) CHECK(content(file + ".damaged") == bytes);
    return found.has_value();
  };
  for (std::size_t bytes = 0; bytes < whole.size(); ++bytes) CHECK_FALSE(left(whole.substr(0, bytes)));
  for (std::size_t at = 0; at < whole.size(); ++at) {
    std::string bent = whole;
    bent[at] = static_cast<char>(bent[at] ^ 1);
    CHECK_FALSE(left(bent));
  }
  CHECK_FALSE(left(whole + " "));
  CHECK_FALSE(left(std::string(1000, '\0')));
  CHECK(left(whole));
}

TEST_CASE("unsaved work: whoever is killed while keeping leaves a whole text", "[studio][unsaved]") {
  const ScratchFolder folder;
  int found = 0;
  for (int k = 0; k < 12; ++k) {
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) keep_for_ever(folder.file("state"));
    std::this_thread::sleep_for(std::chrono::milliseconds(15 + 7 * k));
    kill(child, SIGKILL);
    waitpid(child, nullptr, 0);
    Unsaved next(folder.file("state"), kSubject);
    const auto left = next.left();
    CHECK(next.trouble().empty());
    if (!left) continue;
    ++found;
    CHECK(left->text == long_text(left->text.front() - 'a'));
  }
  CHECK(found > 0);
}

TEST_CASE("unsaved work: without a place to keep it in, it says so and goes on", "[studio][unsaved]") {
  const ScratchFolder folder;
  Unsaved nowhere("", kSubject);
  nowhere.keep("text");
  CHECK_THAT(nowhere.trouble(), Catch::Contains("XDG_STATE_HOME"));
  CHECK_FALSE(nowhere.left());
  write(folder.file("file"), "in the way");
  Unsaved blocked(folder.file("file"), kSubject);
  blocked.keep("text");
  CHECK_THAT(blocked.trouble(), Catch::Contains("is not kept"));
  CHECK_FALSE(blocked.left());
}

TEST_CASE("unsaved work: the state's folder is the standard's", "[studio][unsaved]") {
  const auto set = [](const char* name, const char* value) { setenv(name, value, 1); };
  const std::string home = std::getenv("HOME") != nullptr ? std::getenv("HOME") : "";
  set("HOME", "/home/anna");
  set("XDG_STATE_HOME", "/var/anna");
  CHECK(state_folder() == "/var/anna/stowpath");
  set("XDG_STATE_HOME", "not/absolute");
  CHECK(state_folder() == "/home/anna/.local/state/stowpath");
  unsetenv("XDG_STATE_HOME");
  unsetenv("HOME");
  CHECK(state_folder().empty());
  if (!home.empty()) set("HOME", home.c_str());
}
