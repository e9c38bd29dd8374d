#include "render/studio/out_files.h"

#include <catch2/catch.hpp>

#include "render/command/files.h"
#include "tests/support/scratch_folder.h"

using namespace stowpath;

TEST_CASE("out files: what is not there and what is ours is written at once, others' files when asked twice", "[studio]") {
  const testing::ScratchFolder folder;
  const std::string fresh = folder.file("fresh.svg"), theirs = folder.file("theirs.svg"), other = folder.file("other.svg");
  write_whole(theirs, "drawn by hand");
  write_whole(other, "drawn by hand too");
  OutFiles out;
  CHECK(out.may_write(fresh));
  write_whole(fresh, "ours");
  out.wrote(fresh);
  CHECK(out.may_write(fresh));
  CHECK_FALSE(out.may_write(theirs));
  CHECK_FALSE(out.may_write(other));  // asked for another in between: both have to be asked for anew
  CHECK_FALSE(out.may_write(theirs));
  CHECK(out.may_write(theirs));
  out.wrote(theirs);
  CHECK(out.may_write(theirs));
  CHECK_FALSE(out.may_write(other));
}
