#include "render/report/motion_page.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

#include "render/paint/base64.h"
#include "render/paint/font.h"
#include "render/paint/number.h"
#include "render/paint/svg.h"
#include "render/report/hoist_words.h"
#include "render/report/recording_words.h"
#include "render/report/motion_page_parts.h"
#include "render/report/words.h"
#include "render/sheet/recording_curves.h"
#include "render/sheet/roll_drawing.h"
#include "render/sheet/stair_drawing.h"
#include "sim/rehearsal/script.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

using nlohmann::json;

constexpr double kViewWidth = 150.0;      // of the drawing, in its own millimetres
constexpr double kViewAir = 6.0;          // round it [mm]
constexpr double kPlotsHeight = 110.0;    // [mm]
constexpr double kRollPlotHeight = 34.0;  // more, where the station is plotted too [mm]
constexpr double kStrays = 0.002;         // of the picture from the recording, between the frames that it keeps [m]
constexpr double kThousandth = 1e-3;      // what numbers of the script are rounded to, in mm and seconds
constexpr double kMillionth = 1e-6;       // and turns [rad]

double rounded(double value, double to) {
  const double steps = std::round(value / to);
  return steps / std::round(1.0 / to) + 0.0;  // no -0
}

// The paper turns clockwise where the room turns counter-clockwise.
void add_pose(json& out, const RecordedPose& pose, const ViewFrame& frame) {
  const Vec2 at = frame(pose.origin);
  out.push_back(rounded(at.x, kThousandth));
  out.push_back(rounded(at.y, kThousandth));
  out.push_back(rounded(-pose.turn, kMillionth));
}

/// The views that a frame is placed in.
struct PageViews {
  ViewFrame side, plan;
};

// From above, out runs down the paper: the stair's turn shows the other way round.
json frame_json(const RecordedFrame& frame, int sections, const PageViews& views) {
  json out{rounded(frame.time, kThousandth), frame.move, rounded(frame.hoist.pull, 0.1), frame.hoist.on ? 1 : 0};
  for (int j = 0; j < sections; ++j) add_pose(out, frame.sections.at(static_cast<std::size_t>(j)), views.side);
  out.push_back(rounded(views.plan.x(frame.station), kThousandth));
  out.push_back(rounded(frame.yaw, kMillionth));
  out.push_back(rounded(frame.push, 0.1));
  out.push_back(rounded(frame.fold.pull, 0.1));
  return out;
}

/// Everything of the page, put together.
/// The hoist's line once, whatever hangs on it, and the runs of the fold line: as the frames have their pulls.
std::vector<RopeRun> shown_ropes(const Model& model) {
  std::vector<RopeRun> out;
  bool line = false;
  for (const RopeRun& rope : model.ropes) {
    const bool first = rope.when == LineState::hooked_on && !std::exchange(line, line || rope.when == LineState::hooked_on);
    if (first || rope.kind == PartKind::fold_line) out.push_back(rope);
  }
  return out;
}

class PageMaker {
 public:
  PageMaker(const RecordingSubject& subject, const MotionWords& words)
      : subject_(subject),
        words_(words),
        told_(told_events(subject.recording)),
        frame_(frame_across(rehearsal_extent(subject), kViewWidth, kViewAir)),
        plan_(plan_across(roll_extent(subject), kViewWidth, kViewAir)),
        rolls_(has_roll(subject.recording)),
        height_(frame_.y(rehearsal_extent(subject).least.y) + kViewAir) {}

  std::string page() {
    const std::string title = words_.title, plots = words_.forces ? plots_section() : "";
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<meta charset=\"utf-8\">\n"
           "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">\n"
           "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
           "script-src 'unsafe-inline'; font-src data:\">\n<title>" +
           xml_escaped(title) + "</title>\n<style>" + font_face() + std::string(motion_page_style()) + svg_style() +
           "</style>\n<main>\n<h1>" + xml_escaped(title) + "</h1>\n<p>" + xml_escaped(words_.answer) + "</p>\n" +
           view_svg() + (rolls_ ? plan_svg() : "") + controls() + "<h2>" + xml_escaped(words_.list) + "</h2>\n" +
           events() + plots + notes() + note({"Cautions", words_.cautions}) +
           "</main>\n<script>const run=" + run_json() + ";\n" + std::string(motion_page_script()) +
           "</script>\n</html>\n";
  }

 private:
  static std::string note(const PageNote& note) {
    return "<h2>" + xml_escaped(note.heading) + "</h2>\n<p>" + xml_escaped(note.words) + "</p>\n";
  }

  std::string notes() const {
    std::string out;
    for (const PageNote& of : words_.notes) out += note(of);
    return out;
  }

  static std::string font_face() {
    return "@font-face{font-family:'Routed Gothic';src:url(data:font/ttf;base64," + base64(lettering_font()) + ")}\n";
  }

  static std::string svg_head(const std::string& kind, double height, const std::string& says) {
    return "<svg class=\"" + kind + "\" viewBox=\"0 0 " + drawing_number(kViewWidth) + " " + drawing_number(height) +
           "\" role=\"img\" aria-label=\"" + xml_escaped(says) + "\">\n";
  }

  std::string view_svg() const {
    DisplayList fixed, strip;
    Labels labels, strip_labels;
    draw_rehearsal_room(fixed, subject_, frame_);
    draw_strip(strip, strip_labels, subject_, frame_, {{0.0, 0.0}, {kViewWidth, height_}}, false);
    label_rehearsal_room(fixed, labels, subject_, frame_);
    return svg_head("view", height_, "Side view, in motion") + svg_items(fixed.items) + "<g class=\"no-scripts\">\n" +
           svg_items(strip.items) + "</g>\n" + moving() + "</svg>\n";
  }

  // The view from above, with the stair about the middle of its hooks; the script moves it.
  std::string plan_svg() const {
    DisplayList fixed, strip, stair;
    Labels labels;
    const double height = plan_.y(roll_extent(subject_).greatest.y) + kViewAir;
    const PaperBox all{{0.0, 0.0}, {kViewWidth, height}};
    draw_roll_room(fixed, subject_, plan_);
    draw_roll_strip(strip, labels, subject_, plan_, all, false);
    label_roll_room(fixed, labels, subject_, plan_, all);
    RecordedFrame still = subject_.recording.frames.front();
    still.station = still.yaw = 0.0;
    ViewFrame own = plan_;
    own.zero = {0.0, -plan_.scale.paper(subject_.model.linkage.pivot.x)};
    draw_stair_above(stair, subject_, own, still, false);
    const Vec2 at = plan_({subject_.recording.frames.front().station, subject_.model.linkage.pivot.x});
    return svg_head("view", height, "The stair along its rail, from above") + svg_items(fixed.items) +
           "<g class=\"no-scripts\">\n" + svg_items(strip.items) + "</g>\n<g id=\"above\" transform=\"translate(" +
           drawing_number(at.x) + " " + drawing_number(at.y) + ")\">\n" + svg_items(stair.items) + "</g>\n</svg>\n";
  }

  // Each section once, in its own frame; the script moves it. It begins where the run does.
  std::string moving() const {
    std::string out;
    const RecordedFrame& first = subject_.recording.frames.front();
    for (int j = 0; j < subject_.recording.sections; ++j) {
      DisplayList section;
      draw_stair(section, {{}, frame_.scale, false}, subject_.model, SectionPoses{}, j);
      const RecordedPose& pose = first.sections.at(static_cast<std::size_t>(j));
      const Vec2 at = frame_(pose.origin);
      out += "<g id=\"section-" + std::to_string(j) + "\" transform=\"translate(" + drawing_number(at.x) + " " +
             drawing_number(at.y) + ") rotate(" + drawing_number(-pose.turn * 180.0 / std::numbers::pi) + ")\">\n" +
             svg_items(section.items) + "</g>\n";
    }
    for (std::size_t i = 0; i < subject_.model.ropes.size(); ++i)
      out += "<line class=\"s-blue\" id=\"rope-" + std::to_string(i) + "\" stroke-width=\"0.4\"/>\n";
    return out;
  }

  std::string controls() const {
    const std::string usual = words_.forces ? "real time" : "as shown";
    return "<output id=\"now\" aria-live=\"off\">Turn on scripts to run it: the stair is drawn where it was, one ghost "
           "over the other.</output>\n<div class=\"bar only-scripts\"><button id=\"back\" aria-label=\"A frame "
           "back\">◀</button><input id=\"slide\" type=\"range\" aria-label=\"Time\"/><button id=\"next\" "
           "aria-label=\"A frame on\">▶</button><button id=\"play\">Play</button><select id=\"fast\" "
           "aria-label=\"Speed\"><option value=\"0.1\">slow, 1/10</option><option value=\"1\" selected=\"\">" +
           usual +
           "</option><option value=\"5\">5 times</option><option value=\"25\">25 times</option></select></div>\n";
  }

  std::string events() const {
    std::string out = "<ol>\n";
    for (std::size_t i = 0; i < told_.size(); ++i) {
      const RecordedEvent& event = told_[i];
      out += "<li id=\"event-" + std::to_string(i) + "\"" + (is_trouble(event) ? " class=\"trouble\"" : "") +
             "><button>" +
             xml_escaped((words_.forces ? time_text(Nominal{event.time}) + "  " : "") +
                         event_sentence(event, subject_.units)) +
             (is_trouble(event) ? " ✗" : "") + "</button></li>\n";
    }
    return out + "</ol>\n";
  }

  std::string plots_section() {
    DisplayList list;
    Labels labels;
    const double height = kPlotsHeight + (rolls_ ? kRollPlotHeight : 0.0);
    time_ = draw_rehearsal_plots(list, labels, subject_, {{0.0, 0.0}, {kViewWidth, height}});
    return "<h2>Against time</h2>\n" +
           svg_head("plots", height, "Pull of the lines, speed of the foot and lean against time") +
           svg_items(list.items) + "<line class=\"cursor s-blue only-scripts\" stroke-width=\"0.4\" y1=\"4\" y2=\"" +
           drawing_number(height - 12.0) + "\"/>\n</svg>\n";
  }

  json rope_end(const RopeEnd& end) const {
    if (end.section < 0)
      return {-1, rounded(frame_.x(end.at.x), kThousandth), rounded(frame_.y(end.at.y), kThousandth)};
    return {end.section, rounded(frame_.scale.paper(end.at.x), kThousandth),
            rounded(-frame_.scale.paper(end.at.y), kThousandth)};
  }

  // Nothing is left out just before the stair is brought elsewhere: what is shown there is no motion.
  void add_frames(json& run) const {
    run["frames"] = run["brought"] = json::array();
    for (const std::size_t i : motion_frames(subject_.model, subject_.recording, kStrays)) {
      if (brought_before(subject_.recording, i)) run["brought"].push_back(run["frames"].size());
      run["frames"].push_back(frame_json(subject_.recording.frames[i], subject_.recording.sections, {frame_, plan_}));
    }
    run["ends"] = rounded(ends_at(subject_.recording), kThousandth);
  }

  json events_json() const {
    json out = json::array();
    for (const RecordedEvent& event : told_)
      out.push_back({rounded(event.time, kThousandth), event_sentence(event, subject_.units), is_trouble(event)});
    return out;
  }

  json moves() const {
    json out = json::array();
    for (const Move& move : subject_.model.moves) out.push_back(move_name(move.kind));
    return out;
  }

  std::string run_json() const {
    const bool imperial = subject_.units == DisplayUnits::imperial;
    json run{{"sections", subject_.recording.sections},
             {"events", events_json()},
             {"moves", moves()},
             {"ropes", json::array()},
             {"forces", words_.forces}};
    add_frames(run);
    for (const RopeRun& rope : shown_ropes(subject_.model))
      run["ropes"].push_back(
          {{"a", rope_end(rope.a)}, {"b", rope_end(rope.b)}, {"hooked", rope.when == LineState::hooked_on}});
    const auto down = lowers_away_at(subject_.recording);
    const CrewSpeeds crew = crew_speeds(subject_.scene);
    run["strongest"] = {crew.strength, crew.by_hand};
    run["down"] = down ? json(rounded(*down, kThousandth)) : json(nullptr);
    const auto last = static_cast<std::size_t>(subject_.recording.sections - 1);
    run["foot"] = rounded(frame_.scale.paper(subject_.model.linkage.length.at(last)), kThousandth);
    run["planMetres"] = plan_.scale.ratio / 1000.0;
    if (rolls_) run["axis"] = rounded(plan_.y(subject_.model.linkage.pivot.x), kThousandth);
    run["metres"] = frame_.scale.ratio / 1000.0;
    run["force"] = imperial ? 1.0 / kPoundForce : 1.0;
    run["forceUnit"] = force_unit(subject_.units);
    run["speed"] = imperial ? 1.0 / kFoot : 1.0;
    run["speedUnit"] = imperial ? "ft/s" : "m/s";
    run["plot"] = {time_.paper.lo, time_.paper.hi, time_.time.lo, time_.time.hi};
    return script_safe(run.dump());
  }

  // Within a script nothing may look like its end.
  static std::string script_safe(std::string text) {
    for (std::size_t at = text.find('<'); at != std::string::npos; at = text.find('<', at + 1))
      text.replace(at, 1, "\\u003c");
    return text;
  }

  const RecordingSubject& subject_;
  const MotionWords& words_;
  std::vector<RecordedEvent> told_;
  ViewFrame frame_, plan_;
  bool rolls_;
  double height_;
  TimeAxis time_;
};

}  // namespace

std::string motion_page(const RecordingSubject& subject, const MotionWords& words) {
  check_rehearsal(subject);
  return PageMaker(subject, words).page();
}

}  // namespace stowpath
