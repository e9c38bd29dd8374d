#include "render/command/apply_command.h"

#include <algorithm>
#include <ostream>

#include "render/command/faults.h"
#include "render/command/files.h"
#include "render/command/output_names.h"
#include "render/report/json.h"
#include "render/report/remedy_words.h"
#include "render/report/text.h"
#include "render/report/wrap.h"
#include "render/report/page.h"
#include "sim/scene/reader.h"
#include "sim/scene/suggest.h"

namespace stowpath {
namespace {

void refuse_writing_over(const SceneRequest& request) {
  if (!request.scene || !same_file(*request.scene, *request.sheet)) return;
  throw UsageFault("-o " + *request.sheet + " would write over the scene itself",
                   "give the changed scene another name");
}

// The finding that an id such as "F1.2" is of.
const Finding& finding_of(const std::string& id, const DryFit& fit) {
  const std::string name = id.substr(0, id.find('.'));
  const auto found =
      std::find_if(fit.findings.begin(), fit.findings.end(), [&](const Finding& f) { return f.id == name; });
  if (found != fit.findings.end()) return *found;
  if (fit.findings.empty())
    throw UsageFault("--apply " + id + ": there is nothing to cure, the scene is clear", "leave --apply out");
  throw UsageFault("--apply " + id + ": there is no finding " + name,
                   "the findings are F1 to " + fit.findings.back().id + "; a cure is named as in --apply F1.1");
}

const Remedy& remedy_of(const std::string& id, const Finding& finding, const std::vector<Cures>& cures) {
  if (const Remedy* found = find_remedy(cures, id)) return *found;
  const Cures* of = cures_of(cures, finding);
  if (of == nullptr || of->remedies.empty())
    throw UsageFault("--apply " + id + ": no cure of " + finding.id + " was found", "stowpath dryfit says what was");
  throw UsageFault("--apply " + id + ": there is no such cure",
                   "of " + finding.id + " there are " + of->remedies.front().id + " to " + of->remedies.back().id);
}

std::string applied_text(const SceneRequest& request, const SceneJob& job, const Remedy& remedy, const Finding& finding,
                         const Assessment& after) {
  std::string text = wrapped(remedy.id + ": " + remedy_sentence(remedy, finding, job.units), kPageWidth, "", "  ");
  for (const Change& change : remedy.changes) {
    for (const ValueChange& value : change.values) {
      const std::string line = std::to_string(place_of(job.scene, value.key).line);
      text += "  line " + line + ", " + value.key + ": " + value.from_text + " becomes " + value.to_text + "\n";
    }
  }
  return text + "Written to " + *request.sheet + ". It is now:\n" +
         verdict_text(after.model, after.fit, request.voice.colour);
}

}  // namespace

int run_apply(const SceneRequest& request, const SceneJob& job, const SceneText& source, const Assessment& assessed,
              const AssessOptions& options, std::ostream& out) {
  refuse_writing_over(request);
  const Finding& finding = finding_of(*request.apply, assessed.fit);
  const std::vector<Cures> cures = cure_job(job, source, assessed, options, request.voice, finding.id);
  const Remedy& remedy = remedy_of(*request.apply, finding, cures);
  const std::string text = SceneDraft(source.text, source.name).write(edits_of(remedy));
  const Assessment after = assess(parse_scene(text, *request.sheet), options);
  write_whole(*request.sheet, text);
  if (request.voice.json) {
    out << applied_json(remedy, finding, *request.sheet, after.model, after.fit, job.units);
  } else if (request.voice.quiet) {
    out << verdict_text(after.model, after.fit, request.voice.colour);
  } else {
    out << applied_text(request, job, remedy, finding, after);
  }
  return after.fit.verdict == Verdict::clear ? kExitClear : kExitFails;
}

}  // namespace stowpath
