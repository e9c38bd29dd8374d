#include "render/studio/rehearsal_picture.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "render/report/hoist_words.h"
#include "render/report/recording_words.h"
#include "render/report/rehearsal_report.h"
#include "render/sheet/recording_curves.h"
#include "render/sheet/rope_drawing.h"
#include "render/sheet/stair_drawing.h"
#include "render/studio/fitting_words.h"
#include "sim/rehearsal/script.h"
#include "sim/rehearsal/world_parts.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

constexpr double kAir = 4.0;                                  // round the view [mm]
constexpr double kWordsUnder = 17.0;                          // three lines [mm]
constexpr double kFresh = 2.0;                                // a touch is told beside its mark for so long [s]
constexpr double kShortestArrow = 4.0, kLongestArrow = 60.0;  // [mm]
constexpr double kWindArrow = 9.0;                            // [mm]

/// The two parts placed as the sections stand.
Separation apart(const WorldPart& a, const WorldPart& b, const SectionPoses& sections) {
  const auto lie = [&](const WorldPart& part) {
    return Outline(part.section < 0 ? part.shape
                                    : placed(part.shape, sections.at(static_cast<std::size_t>(part.section))));
  };
  return separation(lie(a), lie(b));
}

class RehearsalPicture {
 public:
  RehearsalPicture(const RehearsalWish& wish, const PaneView& window)
      : wish_(wish),
        subject_(wish.subject),
        frame_(window.frame),
        bounds_{{1.0, 1.0}, {window.size.x - 1.0, window.size.y - kWordsUnder}},
        sections_(recorded_poses(wish.shown, wish.subject.recording.sections)) {
    list_.width = window.size.x;
    list_.height = window.size.y;
    list_.title = "Rehearsal: " + subject_.model.name;
    list_.description = frame_words(subject_.model, subject_.recording, wish.shown, subject_.units);
  }

  DisplayList drawn() {
    draw_rehearsal_room(list_, subject_, frame_);
    zones();
    meant();
    list_.open("stair", "The stair as the physics world has it");
    draw_stair(list_, frame_, subject_.model, sections_);
    list_.close();
    words();
    ropes();
    push();
    wind();
    touches();
    if (wish_.show_names) label_rehearsal_room(list_, labels_, subject_, frame_);
    return std::move(list_);
  }

 private:
  double now() const { return wish_.shown.time; }

  // Those entered so far.
  void zones() {
    for (const RecordedEvent& event : subject_.recording.events) {
      if (event.kind != RecordedEventKind::zone_entered || event.time > now()) continue;
      for (const ZonePart& zone : subject_.model.zones)
        if (zone.name == event.other) zone_entered(zone, event);
    }
  }

  void zone_entered(const ZonePart& zone, const RecordedEvent& event) {
    list_.open("zone-entered", event_sentence(event, subject_.units));
    list_.path(on_paper(frame_, zone.outline), true, Pen{Ink::red, kMedium, Dash::chain});
    const Vec2 middle = frame_(bounding_disc(zone.outline).centre);
    cross_mark(list_, middle, 2.0, {Ink::red, kMedium});
    say(event_sentence(event, subject_.units), middle, Ink::red);
    list_.close();
  }

  void meant() {
    if (!wish_.meant) return;
    list_.open("meant", "Where the crew means the stair to be");
    draw_stair_ghost(list_, frame_, subject_.model, *wish_.meant, {Ink::blue, kThin, Dash::hidden});
    list_.close();
  }

  void ropes() {
    list_.open("lines", "Lines");
    const CrewSpeeds crew = crew_speeds(subject_.scene);
    if (subject_.scene.hoist && subject_.scene.hoist->ceiling_point)
      rope(hoist_rigging(subject_.scene), wish_.shown.hoist, crew.strength, "");
    if (const auto fold = fold_rigging(subject_.scene)) rope(*fold, wish_.shown.fold, crew.by_hand, "fold line");
    list_.close();
  }

  void rope(const Rigging& rigging, const RecordedLine& now, double strongest, const std::string& name) {
    const RopeSight sight{rigging, sections_, now, strongest};
    draw_rope(list_, labels_, frame_, sight);
    label_rope(list_, labels_, frame_, sight, name, name.empty() ? kFigures : kNotes, subject_.units, bounds_);
  }

  void push() {
    if (!wish_.push) return;
    const PushSight& push = *wish_.push;
    const Vec2 held = frame_(push.at);
    const double way = push.force < 0.0 ? -1.0 : 1.0;
    const double length = std::clamp(std::abs(push.force) / kNewtonsPerMm, kShortestArrow, kLongestArrow);
    const Vec2 tip = held + Vec2{way * length, 0.0};
    const Pen pen{Ink::red, push.aimed ? kMedium : kHeavy, push.aimed ? Dash::hidden : Dash::solid};
    list_.open("push", push.aimed ? "A push that is aimed" : "A push");
    list_.circle(held, 0.9, Pen{Ink::red, kMedium}, Ink::paper);
    list_.line(held, tip, pen);
    arrowhead(list_, tip, {way, 0.0}, Ink::red);
    const double up = push.at.y - subject_.model.floor_level;
    const std::string height = subject_.units == DisplayUnits::metric ? format_metres(Nominal{up}, 2)
                                                                      : format_length(Nominal{up}, subject_.units);
    say(std::string(push.aimed ? "push " : "pushed ") + force_text(Nominal{std::abs(push.force)}, subject_.units) +
            " at " + height,
        tip, Ink::red);
    list_.close();
  }

  // Arrows against each section's middle.
  void wind() {
    if (wish_.gust == 0.0) return;
    const double way = wish_.gust > 0.0 ? -1.0 : 1.0;
    list_.open("gust", "Wind");
    for (int j = 0; j < subject_.model.linkage.sections; ++j) {
      const auto k = static_cast<std::size_t>(j);
      const Vec2 tip = frame_(sections_.at(k) * subject_.model.masses.at(k).centre) - Vec2{4.0 * way, 0.0};
      for (const double up : {-3.0, 0.0, 3.0}) {
        const Vec2 end = tip + Vec2{0.0, up};
        list_.line(end - Vec2{way * kWindArrow, 0.0}, end, {Ink::blue, kThin});
        arrowhead(list_, end, {way, 0.0}, Ink::blue);
      }
      if (j == 0) say("gust of " + speed_text(Nominal{std::abs(wish_.gust)}, subject_.units), tip, Ink::blue);
    }
    list_.close();
  }

  void touches() {
    list_.open("touches", "Where parts met");
    for (const HappenedAt& touch : wish_.touches) {
      if (touch.event.time > now() || !worth_telling(touch.event)) continue;
      const bool fresh = now() - touch.event.time < kFresh;
      const Vec2 at = frame_(touch.at);
      cross_mark(list_, at, fresh ? 2.4 : 1.2, {Ink::red, fresh ? kHeavy : kThin});
      if (fresh) say(event_sentence(touch.event, subject_.units), at, Ink::red);
    }
    list_.close();
  }

  void say(const std::string& words, Vec2 at, Ink ink) {
    if (at.x > bounds_.least.x && at.x < bounds_.greatest.x && at.y > bounds_.least.y && at.y < bounds_.greatest.y)
      labels_.place(list_, {{}, words, kNotes, Anchor::start, ink, 0.0, true}, at, bounds_);
  }

  void words() {
    list_.open("words", "Where the rehearsal stands");
    list_.box({0.0, bounds_.greatest.y}, {list_.width, list_.height}, {}, Ink::paper);
    double y = bounds_.greatest.y + 4.5;
    labels_.fix(list_,
                {{kAir, y}, frame_words(subject_.model, subject_.recording, wish_.shown, subject_.units), kFigures});
    if (const auto last = last_told(subject_.recording, now())) {
      const bool trouble = is_trouble(*last);
      if (trouble) cross_mark(list_, {kAir + 0.8, y + 3.8}, 0.9, {Ink::red, kMedium});
      const double x = kAir + (trouble ? 3.0 : 0.0);
      const std::string happened = time_text(Nominal{last->time}) + "  " + event_sentence(*last, subject_.units);
      labels_.fix(list_, {{x, y + 5.0},
                          one_line_of(happened, kNotes, list_.width - x),
                          kNotes,
                          Anchor::start,
                          trouble ? Ink::red : Ink::line});
    }
    labels_.fix(list_, {{kAir, y + 9.5}, simulation_words(), kNotes, Anchor::start, Ink::soft});
    list_.close();
  }

  std::string simulation_words() const {
    const std::string step =
        "A simulation, step 1/" + format_decimal(Nominal{1.0 / subject_.recording.step}, 0) + " s: ";
    return fitting_words(
        {step + "it proves no clearance, the dry fit does. Blue: where the crew means the stair to be.",
         step + "it proves no clearance. Blue: as the crew means it.", "A simulation: it proves no clearance.",
         "It proves no clearance."},
        kNotes, list_.width - kAir);
  }

  const RehearsalWish& wish_;
  const RecordingSubject& subject_;
  ViewFrame frame_;
  PaperBox bounds_;
  SectionPoses sections_;
  DisplayList list_;
  Labels labels_;
};

}  // namespace

std::optional<Vec2> touch_place(const Model& model, const SectionPoses& sections, const RecordedEvent& touch) {
  const std::vector<WorldPart> parts = world_parts(model, model.home.value_or(model.span.middle()));
  double least = std::numeric_limits<double>::infinity();
  std::optional<Vec2> place;
  for (const WorldPart& a : parts) {
    if (a.name != touch.what || a.section < 0) continue;
    for (const WorldPart& b : parts) {
      if (b.name != touch.other || b.kind == PartKind::zone || b.section == a.section) continue;
      const Separation near = apart(a, b, sections);
      if (near.distance < least) place = lerp(near.on_a, near.on_b, 0.5), least = near.distance;
    }
  }
  return place;
}

DisplayList rehearsal_picture(const RehearsalWish& wish, const PaneView& window) {
  return RehearsalPicture(wish, window).drawn();
}

ViewFrame whole_rehearsal(const RecordingSubject& subject, Vec2 size) {
  const PaperBox extent = rehearsal_extent(subject);
  const Vec2 model = extent.greatest - extent.least;
  const Vec2 room{size.x - 2.0 * kAir, size.y - kWordsUnder - 2.0 * kAir};
  ViewFrame frame;
  frame.scale.ratio =
      std::max({1000.0 * model.x / std::max(room.x, 1.0), 1000.0 * model.y / std::max(room.y, 1.0), 1.0});
  const double left = 0.5 * (size.x - frame.scale.paper(model.x));
  frame.zero = {left - frame.scale.paper(extent.least.x),
                size.y - kWordsUnder - kAir + frame.scale.paper(extent.least.y)};
  return frame;
}

}  // namespace stowpath
