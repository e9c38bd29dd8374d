#include <algorithm>
#include <cmath>

#include "render/report/hardware_words.h"
#include "render/report/hoist_words.h"
#include "render/report/loads_report.h"
#include "render/report/masses_words.h"
#include "render/report/page.h"
#include "render/report/words.h"
#include "render/report/wrap.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

std::string_view loads_word(const LoadsSubject& subject) { return verdict_word(loads_verdict(subject)); }

class Writer {
 public:
  Writer(const LoadsSubject& subject, const TextOptions& options)
      : subject_(subject), page_(options.colour), units_(options.units) {}

  std::string text() {
    page_.raw(loads_verdict_text(subject_, page_.colour()));
    write_hardware(page_, subject_.loads.hardware, units_);
    rail();
    climber();
    joints();
    framing();
    write_masses(page_, subject_.weights, units_);
    page_.section("TAKEN FOR GRANTED", loads_assumed(subject_));
    page_.section("LIMITS", loads_cautions());
    return page_.text();
  }

 private:
  std::string torque(double newton_metres) const { return torque_text(AtMost{newton_metres}, units_); }

  void rail() {
    Table table;
    for (const std::size_t column : {1U, 2U, 3U, 4U}) table.figures(column);
    table.row({"on the pipe", "sags with", "hogs with", "stress", "gives way"});
    for (const RailCase& rail : telling_rails(subject_.loads.rails)) {
      table.row({rail_name(subject_.scene, rail.forces), torque(rail.peaks.sagging.value),
                 torque(rail.peaks.hogging.value), stress_text(AtMost{rail.design_stress}, units_),
                 format_small_length(AtMost{rail.peaks.down.value}, units_),
                 "at station " + place_text(Nominal{rail.peaks.down.at}, units_)});
    }
    page_.heading("RAIL");
    if (!subject_.loads.rails.empty()) page_.raw(table.text());
    page_.paragraph(rail_sentence(subject_));
  }

  void climber() {
    const ClimberReport& report = subject_.loads.climber;
    if (report.places.empty()) return;
    Table table;
    for (const std::size_t column : {1U, 2U, 3U, 4U, 5U}) table.figures(column);
    table.row({"a person on", "hooks", "floor", "one hook", "one caster", "bends"});
    for (const ClimberPlace& place : report.places) {
      table.row({place.name, force_text(AtMost{place.hooks}, units_), force_text(AtMost{place.floor}, units_),
                 force_text(AtMost{place.worst_hook}, units_), force_text(AtMost{place.worst_caster}, units_),
                 stress_text(AtMost{report.bending_stress(place)}, units_)});
    }
    page_.table("STANDING, with a person of " + mass_text(Nominal{report.mass}, units_), table);
    page_.paragraph(
        "The foot in the middle and all on the floor; one hook and one caster: whichever feet are in the air, the foot "
        "up to " +
        place_text(Nominal{subject_.scene.climber.aside}, units_) + " aside. Bends: stress in the side rails.");
  }

  void joints() {
    const ClimberPlace* worst = hardest_joint();
    if (worst == nullptr) return;
    Table table;
    for (const std::size_t column : {1U, 2U, 3U, 4U}) table.figures(column);
    table.row({"joint", "moment", "lock pin", "scab", "hinge"});
    for (const JointLoad& joint : worst->joints) {
      table.row({std::to_string(joint.hinge + 1), torque(joint.moment), force_text(AtMost{joint.pin}, units_),
                 torque(joint.scab),
                 force_text(AtMost{joint.arm > 0.0 ? joint.hinge_force : joint.hinge_unlocked}, units_)});
    }
    page_.table("JOINT, each side, with the person on " + worst->name, table);
  }

  void framing() {
    const std::vector<FramingLoad>& all = subject_.loads.framing;
    if (all.empty()) return;
    page_.heading("FRAMING, for whoever answers for it");
    const auto said = [](const FramingLoad& load) { return load.place != FramingPlace::not_said; };
    const auto force = [](const Scene& scene, double newtons) { return force_text(AtMost{newtons}, units_of(scene)); };
    for (const FramingLoad& load : all)
      if (said(load)) page_.paragraph(framing_words(subject_.scene, load, force));
    if (!std::all_of(all.begin(), all.end(), said))
      page_.paragraph(
          "Where the members are that brackets or ceiling point hang from is not said (loft.framing, room.framing): "
          "one "
          "member may get all of a bracket's load, or of the ceiling point's.");
    std::string caution = std::string(kFramingCaution) + ".";
    caution.front() = 'A';
    page_.paragraph(caution);
  }

  const ClimberPlace* hardest_joint() const {
    const ClimberPlace* worst = nullptr;
    double most = 0.0;
    for (const ClimberPlace& place : subject_.loads.climber.places) {
      for (const JointLoad& joint : place.joints) {
        if (std::abs(joint.moment) <= most) continue;
        most = std::abs(joint.moment);
        worst = &place;
      }
    }
    return worst;
  }

  const LoadsSubject& subject_;
  ReportPage page_;
  DisplayUnits units_;
};

}  // namespace

HardwareVerdict loads_verdict(const LoadsSubject& subject) {
  const HardwareVerdict pieces = hardware_verdict(subject.loads.hardware);
  return subject.loads.rail_problem.empty() ? pieces : HardwareVerdict::over;
}

bool all_bear(const LoadsSubject& subject) { return loads_verdict(subject) == HardwareVerdict::within; }

std::string loads_line(const LoadsSubject& subject) {
  const std::string rail = subject.loads.rail_problem.empty() ? "" : "; the rail: " + subject.loads.rail_problem;
  return std::string(loads_word(subject)) + ": " + hardware_sentence(subject.loads.hardware, subject.units) + rail +
         ". " + subject.model.name;
}

std::string loads_verdict_text(const LoadsSubject& subject, bool colour) {
  return answer_text(loads_line(subject), loads_word(subject), all_bear(subject) ? "1;32" : "1;31", colour);
}

std::string rail_name(const Scene& scene, const HookForces& forces) {
  if (forces.share.empty()) return forces.name;
  const auto most = std::max_element(forces.share.begin(), forces.share.end());
  if (*most <= *std::min_element(forces.share.begin(), forces.share.end())) return forces.name;
  const auto hook = static_cast<std::size_t>(most - forces.share.begin());
  const std::vector<double>& stations = scene.stair.hooks.stations;
  if (stations.size() != 2) return forces.name + ", most on hook " + std::to_string(hook + 1);
  return forces.name + (stations[hook] < stations[1 - hook] ? ", most on the left hook" : ", most on the right hook");
}

std::string rail_sentence(const LoadsSubject& subject) {
  const LoadsReport& loads = subject.loads;
  if (!loads.rail_problem.empty()) return loads.rail_problem + ".";
  return "Stress with 0.93 of the listed wall; " + stress_text(AtLeast{loads.pipe.allowable}, subject.units) +
         " would be allowed (yield " + stress_text(AtLeast{loads.pipe.yield}, subject.units) + " over " +
         format_decimal(Nominal{kSteelFactor}, 2) + ", " + std::string(status_text(loads.pipe.status)) +
         "). Under a person the pipe gives way by up to " + format_small_length(AtMost{loads.sag.most}, subject.units) +
         " at the hooks, with the stair at station " + place_text(Nominal{loads.sag.station}, subject.units) +
         "; one hook by " + format_small_length(AtMost{loads.sag.difference}, subject.units) +
         " more than the other at most. stowpath dryfit --sagged checks the clearances with that.";
}

std::string loads_assumed(const LoadsSubject& subject) {
  const ClimberReport& climber = subject.loads.climber;
  const Climber& who = subject.scene.climber;
  const auto length = [&](double metres) { return place_text(Nominal{metres}, subject.units); };
  std::string text =
      "Cases, each on every tread, with whichever feet in the air: one person of " +
      mass_text(Nominal{climber.mass}, subject.units) + "; one of " + mass_text(Nominal{who.usual}, subject.units) +
      " who climbs, footfalls " + format_decimal(Nominal{who.footfall}, 2) +
      " times the weight; steps off the top with a push of " + force_text(Nominal{who.push}, subject.units) +
      "; leans " + length(who.leans_out) + " out; the foot up to " + length(who.aside) +
      " aside. Against what breaks a piece: five times the usual "
      "person, 1,000 lb at least (29 CFR 1910.25(b)(6)), and a stair that catches while the line is hauled. "
      "Wood: " +
      std::string(climber.wood.species->full_name) + " No. 2, dry, normal duration of load";
  if (climber.wood.assumed) text += " (no species given)";
  text += "; the pipe is steel of grade " + subject.scene.rail.pipe.steel + ". Loads of a moving line times " +
          format_decimal(Nominal{subject.scene.dynamic_factor}, 2) + ".";
  if (!subject.hoisted) text += " No hoist: its hardware is not looked at.";
  return text;
}

std::string loads_cautions() {
  return "Figures to look at with whoever answers for the building; they approve nothing. What joists, trusses and "
         "roof "
         "members get is given as a load: a licensed engineer must accept it. Rot, knots, wear, old holes and "
         "workmanship are not seen here.";
}

std::string loads_text(const LoadsSubject& subject, const TextOptions& options) {
  return Writer(subject, options).text();
}

}  // namespace stowpath
