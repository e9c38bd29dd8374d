#include <cstddef>

#include "sim/remedy/measurement_list.h"

namespace stowpath {
namespace {

void add_leads(const Scene& scene, std::vector<Measurement>& list) {
  const std::size_t leads = scene.hoist->line.leads.size();
  for (std::size_t i = 0; i < leads; ++i) {
    const std::string listed = "hoist.line.leads[" + std::to_string(i) + "]";
    const std::string key = i == 0 ? given_key(scene, "hoist.line.lead", listed) : listed;
    const std::string words = leads == 1 ? "lead's" : "lead " + std::to_string(i + 1) + "'s";
    add_length(list, key + ".out", words + " distance from the back wall",
               [i](Scene& s) -> double& { return s.hoist->line.leads[i].at.x; });
    add_length(list, key + ".up", words + " height", [i](Scene& s) -> double& { return s.hoist->line.leads[i].at.y; });
    add_length(list, key + ".station", words + " station",
               [i](Scene& s) -> double& { return s.hoist->line.leads[i].station; });
  }
}

void add_hand(const Scene& scene, std::vector<Measurement>& list) {
  if (!scene.hoist->line.hand) return;
  const std::string key = "hoist.line.hand";
  add_length(list, key + ".out", "hand's distance from the back wall",
             [](Scene& s) -> double& { return s.hoist->line.hand->at.x; });
  add_length(list, key + ".up", "hand's height", [](Scene& s) -> double& { return s.hoist->line.hand->at.y; });
  add_length(list, key + ".station", "hand's station", [](Scene& s) -> double& { return s.hoist->line.hand->station; });
}

/// Blocks that are not told go with the line.
void add_line(const Scene& scene, std::vector<Measurement>& list) {
  const bool told = scene.where.contains("hoist.line.blocks");
  list.push_back({"hoist.line.diameter", "hoist line's diameter", false, [told](Scene& s, double by) {
                    HoistLine& line = s.hoist->line;
                    const double larger = 1.0 + by / line.diameter;
                    line.diameter += by;
                    if (!told && line.blocks) line.blocks->length *= larger, line.blocks->width *= larger;
                  }});
  if (scene.hoist->line.blocks) {
    add_length(list, "hoist.line.blocks.length", "blocks' length",
               [](Scene& s) -> double& { return s.hoist->line.blocks->length; });
    add_length(list, "hoist.line.blocks.width", "blocks' width",
               [](Scene& s) -> double& { return s.hoist->line.blocks->width; });
  }
  if (scene.hoist->line.hangs_to)
    add_length(list, "hoist.line.hangs to", "height that the line hangs to",
               [](Scene& s) -> double& { return *s.hoist->line.hangs_to; });
}

void add_spreader(const Scene& scene, std::vector<Measurement>& list) {
  if (!scene.hoist->spreader) return;
  const auto size = [&](const char* of, const char* words, double Spreader::*number) {
    add_length(list, std::string("hoist.spreader") + of, words,
               [number](Scene& s) -> double& { return (*s.hoist->spreader).*number; });
  };
  size(".length", "spreader's length", &Spreader::length);
  size(".drop", "spreader's height over the picks", &Spreader::drop);
  size(".thickness", "spreader's thickness", &Spreader::thickness);
}

void add_ceiling_point(const Scene& scene, std::vector<Measurement>& list) {
  if (!scene.hoist->ceiling_point) return;
  const std::string key = "hoist.ceiling point";
  add_length(list, key + ".out", "ceiling point's distance from the back wall",
             [](Scene& s) -> double& { return s.hoist->ceiling_point->at.x; });
  add_length(list, key + ".up", "ceiling point's height",
             [](Scene& s) -> double& { return s.hoist->ceiling_point->at.y; });
  add_length(list, key + ".station", "ceiling point's station",
             [](Scene& s) -> double& { return s.hoist->ceiling_point->station; });
}

template <class Point>
void add_section_point(std::vector<Measurement>& list, const std::string& key, const std::string& words, Point point) {
  add_length(list, key + ".along", words + ", along", [point](Scene& s) -> double& { return point(s).along; });
  add_length(list, key + ".across", words + ", across", [point](Scene& s) -> double& { return point(s).across; });
}

void add_fold_line(const Scene& scene, std::vector<Measurement>& list) {
  if (!scene.fold_line) return;
  add_section_point(list, "fold line.from", "fold line's start",
                    [](Scene& s) -> SectionPoint& { return s.fold_line->from; });
  for (std::size_t i = 0; i < scene.fold_line->through.size(); ++i)
    add_section_point(list, indexed("fold line.through", i), "fold line's pulley " + std::to_string(i + 1),
                      [i](Scene& s) -> SectionPoint& { return s.fold_line->through[i]; });
  add_length(list, "fold line.diameter", "fold line's diameter",
             [](Scene& s) -> double& { return s.fold_line->diameter; });
  add_length(list, "fold line.station", "fold line's station",
             [](Scene& s) -> double& { return s.fold_line->station; });
}

std::string step_word(StepKind kind) {
  switch (kind) {
    case StepKind::roll:
      return "roll";
    case StepKind::lift:
      return "lift";
    case StepKind::fold:
      return "fold";
    case StepKind::together:
      return "together";
    case StepKind::drag:
      return "drag";
    case StepKind::hang:
      return "hang";
    default:
      return "";  // pins and hooks set nothing
  }
}

/// A fold is written by itself, as a list, or with its hinge.
std::string fold_key(const Scene& scene, const Step& step, const std::string& key) {
  if (step.kind == StepKind::together) return key + ".fold";
  return given_key(scene, key + ".to", key);
}

void add_step(const Scene& scene, std::size_t i, std::vector<Measurement>& list) {
  const Step& step = scene.procedure[i];
  const std::string word = step_word(step.kind), key = indexed("procedure", i, "." + word);
  const std::string words = "step " + std::to_string(i + 1) + "'s ";
  if (step.station)
    add_length(list, step.kind == StepKind::together ? key + ".station" : key, words + "station",
               [i](Scene& s) -> double& { return *s.procedure[i].station; });
  if (step.lean)
    add_angle(list, given_key(scene, key + ".lean", key), words + "lean",
              [i](Scene& s) -> double& { return *s.procedure[i].lean; });
  for (std::size_t k = 0; k < step.folds.size(); ++k) {
    if (!step.folds[k]) continue;
    add_angle(list, fold_key(scene, step, key), words + of_several("fold", k, step.folds.size()),
              [i, k](Scene& s) -> double& { return *s.procedure[i].folds[k]; });
  }
}

}  // namespace

void add_hoist(const Scene& scene, std::vector<Measurement>& list) {
  if (scene.hoist) {
    add_ceiling_point(scene, list);
    if (scene.hoist->home)
      add_length(list, "hoist.home", "home station", [](Scene& s) -> double& { return *s.hoist->home; });
    add_length(list, "hoist.home within", "how near home the stair stands",
               [](Scene& s) -> double& { return s.home_within; });
    add_section_point(list, "hoist.pick", "pick", [](Scene& s) -> SectionPoint& { return s.hoist->pick; });
    add_length(list, "hoist.pick.spread", "picks' spread", [](Scene& s) -> double& { return s.hoist->spread; });
    add_line(scene, list);
    add_leads(scene, list);
    add_hand(scene, list);
    add_spreader(scene, list);
  }
  add_fold_line(scene, list);
}

void add_procedure(const Scene& scene, std::vector<Measurement>& list) {
  for (std::size_t i = 0; i < scene.procedure.size(); ++i) add_step(scene, i, list);
}

}  // namespace stowpath
