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
  for (int k = 0;; ++k) unsaved.keep(long_text(k), "base\n");
}

}  // namespace

TEST_CASE("unsaved work: what was kept last is there for the next window, until it is forgotten", "[studio][unsaved]") {
  const ScratchFolder folder;
  {
    Unsaved unsaved(folder.file("state"), kSubject);
    CHECK_FALSE(unsaved.left());
    unsaved.keep("first\n", "");
    unsaved.keep("second\nof two lines", "file's\n");
    CHECK(unsaved.trouble().empty());
  }
  Unsaved next(folder.file("state"), kSubject);
  const auto left = next.left();
  REQUIRE(left);
  CHECK(left->text == "second\nof two lines");
  CHECK(left->base == "file's\n");
  CHECK(std::abs(std::difftime(std::time(nullptr), left->when)) < 60.0);
  CHECK_FALSE(Unsaved(folder.file("state"), "/home/anna/other.yaml").left());
  next.forget();
  CHECK_FALSE(next.left());
}

TEST_CASE("unsaved work: two windows on one scene keep theirs apart", "[studio][unsaved]") {
  const ScratchFolder folder;
  {
    Unsaved one(folder.file("state"), kSubject), two(folder.file("state"), kSubject);
    one.keep("one", "");
    two.keep("two", "");
    CHECK(one.left()->text == "one");
    CHECK(two.left()->text == "two");
    one.forget();
  }
  Unsaved next(folder.file("state"), kSubject);
  REQUIRE(next.left());
  CHECK(next.left()->text == "two");
}

TEST_CASE("unsaved work: no lock's file outlives its window, and the next one locks all the same",
          "[studio][unsaved]") {
  const ScratchFolder folder;
  {
    Unsaved one(folder.file("state"), kSubject), two(folder.file("state"), kSubject);
    one.keep("one", "");
  }
  std::size_t files = 0;
  for (const auto& entry : std::filesystem::directory_iterator(folder.file("state"))) {
    INFO(entry.path());
    CHECK(entry.path().extension() == ".unsaved");
    ++files;
  }
  CHECK(files == 1);
  Unsaved again(folder.file("state"), kSubject), beside(folder.file("state"), kSubject);
  CHECK(again.left());
  CHECK_FALSE(beside.left());
}

// Each child takes the place and gives it up again as fast as it can; what it finds there is its own or nothing.
TEST_CASE("unsaved work: no two windows have one place, however they come and go", "[studio][unsaved]") {
  const ScratchFolder folder;
  std::vector<pid_t> children;
  for (int child = 0; child < 4; ++child) {
    const pid_t id = fork();
    REQUIRE(id >= 0);
    if (id == 0) {
      const std::string mine = "child " + std::to_string(child);
      bool alone = true;
      for (int k = 0; k < 300 && alone; ++k) {
        Unsaved unsaved(folder.file("state"), kSubject);
        unsaved.keep(mine, "");
        const auto left = unsaved.left();
        alone = left && left->text == mine;
        unsaved.forget();
      }
      _exit(alone ? 0 : 1);
    }
    children.push_back(id);
  }
  for (const pid_t id : children) {
    int how = -1;
    waitpid(id, &how, 0);
    CHECK(how == 0);
  }
}

TEST_CASE("unsaved work: put aside it is a file of its own, each time another", "[studio][unsaved]") {
  const ScratchFolder folder;
  Unsaved unsaved(folder.file("state"), kSubject);
  unsaved.keep("one", "");
  const std::string first = unsaved.set_aside("one");
  CHECK(content(first) == "one");
  CHECK_FALSE(unsaved.left());
  unsaved.keep("two", "");
  const std::string second = unsaved.set_aside("two");
  CHECK(content(first) == "one");
  CHECK(content(second) == "two");
  CHECK(std::filesystem::path(second).extension() == ".yaml");
}

TEST_CASE("unsaved work: cut short anywhere or full of something else, it is put aside", "[studio][unsaved]") {
  const ScratchFolder folder;
  {
    Unsaved unsaved(folder.file(""), kSubject);
    unsaved.keep("name: loft\nwidth: 560\n", "name: loft\n");
  }
  const std::string file = only_file(folder, ".unsaved"), whole = content(file);
  const auto left = [&](const std::string& bytes) {
    write(file, bytes);
    Unsaved unsaved(folder.file(""), kSubject);
    const auto found = unsaved.left();
    CHECK(unsaved.trouble().empty() == found.has_value());
    if (found) return true;
    CHECK(content(file + ".damaged") == bytes);
    std::filesystem::remove(file + ".damaged");
    return false;
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
  write(file + ".damaged", "an earlier one");
  write(file, "cut");
  CHECK_FALSE(Unsaved(folder.file(""), kSubject).left());
  CHECK(content(file + ".damaged") == "an earlier one");
  CHECK(content(file + ".damaged-2") == "cut");
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
  nowhere.keep("text", "");
  CHECK_THAT(nowhere.trouble(), Catch::Contains("XDG_STATE_HOME"));
  CHECK_FALSE(nowhere.left());
  write(folder.file("file"), "in the way");
  Unsaved blocked(folder.file("file"), kSubject);
  blocked.keep("text", "");
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
