#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "render/command/hand_push.h"
#include "render/command/scene_job.h"
#include "render/report/rehearsal_report.h"
#include "sim/rehearsal/rehearsal.h"

namespace stowpath {

/// What is to be tried in a rehearsal, as written on the command line; empty: not asked.
struct WhatIfs {
  std::string let_go, line_breaks, push, gust, when, from;
  std::vector<int> no_pins;  ///< hinges, from 1
  bool only_up = false;      ///< the way down left out
  bool alone = false;        ///< nobody at the foot on the way down
};

/// Files of a rehearsal; empty: none.
struct RehearsalFiles {
  std::string record;   ///< to keep the run in
  std::string drawing;  ///< .svg, .pdf, .png, .html or .webp
  std::string replay;   ///< a recording to tell and draw again, in place of a run; "-" for standard input
};

/// Whether all of them can be written, and nothing over what is read: asked before any work. @throws UsageFault,
/// FileFault
void check_rehearsal_files(const SceneRequest& request, const RehearsalFiles& files);

/// A push as --push takes it. @throws UsageFault naming what is wrong and what to write
HandPush asked_push(const std::string& text);

/// "12s", "1.5 min" as seconds, "120N at 1.1m outward for 2s", "10 m/s for 3s". The push is taken as outward.
/// @throws UsageFault naming the option, what is wrong and what to write
RehearsalOptions rehearsal_options(const WhatIfs& asked);

/// Keeps and draws the run where that is wanted. Of a refused one there is nothing to keep: it leaves no file.
/// @throws UsageFault, FileFault
void keep_run(const RehearsalSubject& subject, const RehearsalFiles& files);

/// Where the stair stands at first: "2.5 m", "home"; as far as it can from where it is rolled to where nothing is said.
/// @param units  of what a fault says
/// @throws UsageFault where that is no station of the stair, or the procedure does not roll it
double station_at_first(const std::string& text, const Model& model, DisplayUnits units = DisplayUnits::metric);

/// The same as the user would write it, for a recording's head; empty where nothing is asked.
std::string what_ifs_text(const WhatIfs& asked);

/// Reads the scene, rehearses it, keeps and draws the run where that is wanted, then prints the report.
/// @returns an ExitCode: fails where something was seen that has to be looked into
/// @throws SceneFault, UsageFault, FileFault; then nothing has been printed
int run_rehearse(const SceneRequest& request, const WhatIfs& asked, const RehearsalFiles& files, std::istream& in,
                 std::ostream& out);

/// Reads the scene and a recording of it, draws that where it is wanted, then prints what happened.
/// @returns an ExitCode: fails where something happened that has to be looked into
/// @throws SceneFault, UsageFault, FileFault; then nothing has been printed
int run_replay(const SceneRequest& request, const RehearsalFiles& files, std::istream& in, std::ostream& out);

}  // namespace stowpath
