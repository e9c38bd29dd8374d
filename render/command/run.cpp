#include "render/command/run.h"

#include <algorithm>
#include <array>
#include <istream>
#include <ostream>
#include <span>

#include <CLI/CLI.hpp>

#include "render/command/dryfit_command.h"
#include "render/command/faults.h"
#include "render/command/hoist_command.h"
#include "render/command/loads_command.h"
#include "render/command/open_command.h"
#include "render/command/rehearse_command.h"
#include "render/command/roll_command.h"
#include "render/command/scene_source.h"
#include "render/report/json.h"
#include "sim/scene/schema.h"
#include "sim/scene/suggest.h"

namespace stowpath {
namespace {

constexpr std::array<std::string_view, 6> kCommands{"dryfit", "hoist", "loads", "open", "rehearse", "schema"};
constexpr std::array<std::string_view, 24> kOptions{
    "--sagged", "--apply", "--no-remedies", "--contacts", "--detail", "--output",  "--json",        "--units",  "--quiet",
    "--color",  "--help",  "--version",     "-o",       "--let-go",  "--line-breaks", "--no-pin", "--push",
    "--gust",   "--when",  "--record",      "--replay", "--only-up", "--alone",       "--from"};

// What the command line says, gathered by the parser.
struct Wanted {
  std::string scene, sheet, detail, units, apply, colour = "auto";
  bool json = false, quiet = false, sagged = false, no_remedies = false, contacts = false;
  WhatIfs what_ifs;
  RehearsalFiles files;
};

bool says_nothing(const std::string& text) { return text.find_first_not_of(' ') == std::string::npos; }

// An option that says nothing would be taken for one that was left out.
const CLI::Validator kSaid(
    [](std::string& text) { return says_nothing(text) ? std::string("nothing is written after it") : ""; }, "");

const CLI::Validator kHinge(
    [](std::string& text) {
      int hinge = 0;
      return says_nothing(text) || CLI::detail::lexical_cast(text, hinge) ? "" : "\"" + text + "\" is no hinge: they count 1, 2 from the rail";
    },
    "");

CLI::App* add_report_command(CLI::App& app, Wanted& wanted, const std::string& name, const std::string& asks) {
  CLI::App* command = app.add_subcommand(name, asks);
  command->add_option("SCENE", wanted.scene, "Scene file, - for standard input; without one: the built-in demo");
  command->add_flag("--json", wanted.json, "Print one JSON object and nothing else");
  command->add_option("--units", wanted.units, "Show lengths in mm or in (default: the scene's)")
      ->type_name("mm|in")
      ->check(CLI::IsMember({"mm", "in"}));
  command->add_flag("--quiet", wanted.quiet, "Print the verdict alone");
  command->add_option("--color", wanted.colour, "Colour the report")
      ->type_name("auto|always|never")
      ->check(CLI::IsMember({"auto", "always", "never"}));
  return command;
}

CLI::App* add_scene_command(CLI::App& app, Wanted& wanted, const std::string& name, const std::string& asks) {
  CLI::App* command = add_report_command(app, wanted, name, asks);
  command->add_option("-o,--output", wanted.sheet, "Write the sheet to FILE: .svg, .pdf or .png")->type_name("FILE");
  return command;
}

void add_rehearse(CLI::App& app, Wanted& wanted) {
  CLI::App* command = add_report_command(app, wanted, "rehearse",
                                         "What happens when it is done? The procedure run in a physics world.");
  WhatIfs& what = wanted.what_ifs;
  command->add_flag("--only-up", what.only_up, "Stop once the stair is parked: leave the way down out");
  command->add_flag("--alone", what.alone, "Nobody draws the foot along the floor on the way down");
  command->add_option("--let-go", what.let_go, "The hoist line is let go after TIME (12s)")->type_name("TIME");
  command->add_option("--line-breaks", what.line_breaks, "The hoist line breaks after TIME")->type_name("TIME");
  command
      ->add_option("--no-pin", what.no_pins,
                   "The stair stands without the pin of hinge N, counted from the rail; may be given several times")
      ->type_name("N")
      ->allow_extra_args(false)
      ->check(kHinge);
  command
      ->add_option(
          "--push", what.push,
          "A hand pushes: \"120N at 1.1m along\" rolls the standing stair, and the procedure is left out; \"120N "
          "at 1.1m outward for 2s\" pushes it off the wall, for 1 s where no time is said")
      ->type_name("PUSH");
  command
      ->add_option("--gust", what.gust,
                   "Air blows against the climber's face: \"10 m/s\", or \"-8 m/s for 3s\" from behind; for 1 s where no "
                   "time is said")
      ->type_name("SPEED");
  command
      ->add_option("--when", what.when,
                   "Push or blow after TIME (default: a push 1 s after the start, or after the stair is rolled; a gust "
                   "alone once it is parked)")
      ->type_name("TIME");
  command->add_option("--from", what.from, "Where the stair stands at first, before it is rolled: a station, or home")
      ->type_name("STATION");
  RehearsalFiles& files = wanted.files;
  command->add_option("--record", files.record, "Keep the run in FILE, as text")->type_name("FILE");
  command->add_option("-o,--output", files.drawing, "Draw the run to FILE: .html, .svg, .pdf, .png or .webp")
      ->type_name("FILE");
  command
      ->add_option("--replay", files.replay,
                   "Tell and draw the run kept in FILE, - for standard input, in place of a new one")
      ->type_name("FILE");
}

bool any_what_if(const WhatIfs& what) { return !what_ifs_text(what).empty(); }

// A push along the rail is a run of its own.
bool rolls_by_itself(const WhatIfs& what) {
  if (what.push.empty() || asked_push(what.push).way != PushWay::along) return false;
  WhatIfs others = what;
  others.push.clear();
  if (any_what_if(others))
    throw UsageFault("--push: along the rail the stair is pushed by itself, without the procedure",
                     "leave the other options out, or write outward in it: \"120N at 1.1m outward\"");
  return true;
}

int do_rehearse(const SceneRequest& request, const Wanted& wanted, std::istream& in, std::ostream& out) {
  const RehearsalFiles& files = wanted.files;
  const WhatIfs& what = wanted.what_ifs;
  if (!files.replay.empty() && (any_what_if(what) || !files.record.empty()))
    throw UsageFault("--replay tells a run as it was: nothing can be changed in it", "leave --replay out to run anew");
  if (rolls_by_itself(what)) return run_roll(request, what.push, files, in, out);
  if (!files.replay.empty()) return run_replay(request, files, in, out);
  return run_rehearse(request, what, files, in, out);
}

void add_dryfit(CLI::App& app, Wanted& wanted) {
  CLI::App* dryfit = add_scene_command(
      app, wanted, "dryfit", "Does it clear, over the whole span and every move? Findings, their cures, and reach.");
  dryfit->get_option("--output")->description("Write the sheet to FILE: .svg, .pdf or .png; or the moves: .webp or .html");
  dryfit->add_flag("--sagged", wanted.sagged, "With the pipe bent under a person; cures are not looked for then");
  dryfit->add_flag("--contacts", wanted.contacts, "List all that may touch: which parts, where, when and how deep");
  dryfit->add_flag("--no-remedies", wanted.no_remedies, "Do not look for cures of what is found");
  dryfit
      ->add_option("--apply", wanted.apply,
                   "Write the scene with this cure to the -o file, as in --apply F1.2 -o new.yaml")
      ->type_name("ID");
  dryfit->add_option("--detail", wanted.detail, "Draw the hook at a bracket, full size, to FILE: .svg, .pdf or .png")
      ->type_name("FILE");
}

// No option of any command, nor the scene, may be an empty text.
void refuse_empty(CLI::App& app) {
  for (CLI::App* command : app.get_subcommands([](CLI::App*) { return true; }))
    for (CLI::Option* option : command->get_options([](CLI::Option* o) { return o->get_items_expected_max() > 0; }))
      option->check(kSaid);
}

bool asks_json(const std::vector<std::string>& arguments) {
  return std::find(arguments.begin(), arguments.end(), "--json") != arguments.end();
}

std::string did_you_mean(const std::string& word, std::span<const std::string_view> known) {
  const auto near = nearest_word(word, known);
  return near ? "did you mean " + std::string(*near) + "?" : "";
}

// The parser reports an unknown command as arguments too many, so it is looked at first.
void check_command(const std::vector<std::string>& arguments) {
  if (arguments.empty())
    throw UsageFault("say what to do", "stowpath dryfit runs the built-in demo; stowpath --help lists the rest");
  const std::string& first = arguments.front();
  if (first.empty() || first.front() == '-' || std::count(kCommands.begin(), kCommands.end(), first) > 0) return;
  std::string hint = did_you_mean(first, kCommands);
  if (hint.empty()) hint = "the commands are " + join_words(kCommands, "and");
  throw UsageFault("\"" + first + "\" is not a command", hint);
}

std::string option_hint(const std::vector<std::string>& arguments) {
  for (const std::string& word : arguments) {
    const std::string name = word.substr(0, word.find('='));
    if (name.size() < 3 || name.compare(0, 2, "--") != 0) continue;
    if (std::count(kOptions.begin(), kOptions.end(), name) > 0) continue;
    const std::string hint = did_you_mean(name, kOptions);
    if (!hint.empty()) return hint;
  }
  const bool known = std::count(kCommands.begin(), kCommands.end(), arguments.front()) > 0;
  return "stowpath " + (known ? arguments.front() : "dryfit") + " --help lists the options";
}

SceneRequest scene_request(const Wanted& wanted, const Terminal& terminal, std::ostream& err) {
  SceneRequest request;
  if (!wanted.scene.empty()) request.scene = wanted.scene;
  if (!wanted.sheet.empty()) request.sheet = wanted.sheet;
  if (!wanted.detail.empty()) request.detail = wanted.detail;
  if (!wanted.units.empty()) request.units = wanted.units == "in" ? DisplayUnits::imperial : DisplayUnits::metric;
  const bool colour = wanted.colour == "always" || (wanted.colour == "auto" && terminal.colour);
  request.sagged = wanted.sagged;
  request.remedies = !wanted.no_remedies;
  request.contacts = wanted.contacts;
  if (!wanted.apply.empty()) request.apply = wanted.apply;
  const bool progress = terminal.progress && !wanted.json && !wanted.quiet;
  request.voice = {wanted.json, wanted.quiet, colour, progress ? &err : nullptr};
  return request;
}

int parse_and_do(const std::vector<std::string>& arguments, const Terminal& terminal, std::istream& in,
                 std::ostream& out, std::ostream& err) {
  check_command(arguments);
  CLI::App app("Reach and clearance of a rolling, folding, hoisted stair.", "stowpath");
  Wanted wanted;
  app.set_version_flag("--version", std::string("stowpath ") + STOWPATH_VERSION);
  app.require_subcommand(1);
  add_dryfit(app, wanted);
  add_scene_command(app, wanted, "hoist",
                    "Can one person lift it? Pull through the lift, winch, rope, and what it weighs.");
  add_scene_command(app, wanted, "loads", "Does everything hold? Rail, joint, treads and hardware, the weakest first.");
  add_rehearse(app, wanted);
  app.add_subcommand("open", "Step through the moves in a window")
      ->add_option("SCENE", wanted.scene, "Scene file; without one: the built-in demo");
  app.add_subcommand("schema", "Print the JSON Schema of the scene file");
  refuse_empty(app);
  std::vector<std::string> last_first(arguments.rbegin(), arguments.rend());  // as the parser takes them
  try {
    app.parse(last_first);
  } catch (const CLI::Success& asked) {
    app.exit(asked, out, out);
    return kExitClear;
  } catch (const CLI::ParseError& error) {
    throw UsageFault(error.what(), option_hint(arguments));
  }
  if (app.got_subcommand("schema")) {
    out << scene_schema();
    return kExitClear;
  }
  const SceneRequest request = scene_request(wanted, terminal, err);
  if (app.got_subcommand("open")) return run_open(request.scene);
  if (app.got_subcommand("hoist")) return run_hoist(request, in, out);
  if (app.got_subcommand("loads")) return run_loads(request, in, out);
  if (app.got_subcommand("rehearse")) return do_rehearse(request, wanted, in, out);
  return run_dryfit(request, in, out);
}

// How faults are told: as text on standard error, or as one JSON object on standard output.
class Teller {
 public:
  Teller(bool json, bool colour, std::ostream& out, std::ostream& err)
      : json_(json), colour_(colour), out_(out), err_(err) {}

  int fault(ExitCode code, const std::string& file, const std::string& problem, const std::string& hint) {
    if (json_) {
      out_ << errors_json({{file, 0, 0, "", problem, hint}});
    } else {
      err_ << "stowpath: " << (file.empty() ? "" : file + ": ") << problem << "\n";
      if (!hint.empty()) err_ << "  = " << hint << "\n";
    }
    return code;
  }

  int scene(const SceneFault& fault) {
    std::vector<ReportedError> errors;
    for (const Diagnostic& d : fault.scene.diagnostics) {
      errors.push_back({fault.scene.file, d.at.line, d.at.column, d.key, d.problem, d.hint});
      if (!json_) err_ << format_diagnostic(d, fault.scene.file, fault.text, colour_) << "\n";
    }
    if (json_) out_ << errors_json(errors);
    return kExitUsage;
  }

 private:
  bool json_, colour_;
  std::ostream& out_;
  std::ostream& err_;
};

}  // namespace

int run(const std::vector<std::string>& arguments, const Terminal& terminal, std::istream& in, std::ostream& out,
        std::ostream& err) {
  Teller tell(asks_json(arguments), terminal.colour, out, err);
  try {
    const int code = parse_and_do(arguments, terminal, in, out, err);
    out.flush();
    return out ? code : tell.fault(kExitFiles, "", "the report cannot be written to standard output", "");
  } catch (const SceneFault& fault) {
    return tell.scene(fault);
  } catch (const UsageFault& fault) {
    return tell.fault(kExitUsage, "", fault.what(), fault.hint);
  } catch (const FileFault& fault) {
    return tell.fault(kExitFiles, fault.file, fault.what(), "");
  } catch (const std::exception& fault) {
    return tell.fault(kExitOurFault, "", std::string("a fault of the program: ") + fault.what(),
                      "please report it with the scene");
  }
}

}  // namespace stowpath
