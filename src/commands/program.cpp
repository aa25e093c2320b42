#include <CLI/CLI.hpp>
#include <cstdlib>
#include <exception>
#include <thread>

#include "commands/commands.h"

namespace gownsheaf {
namespace {

std::string from_environment(const char* name, const char* standing) {
  const char* value = std::getenv(name);
  return value != nullptr && *value != '\0' ? value : standing;
}

void add_common(CLI::App* command, Settings& settings, std::string& log, const char* what = "PROJECT",
                const char* meaning = "The project file, YAML") {
  command->add_option(what, settings.project, meaning)->required();
  command->add_option("--templates", settings.template_folder, "Folder of packet templates")->capture_default_str();
  command->add_option("--fonts", settings.font_root, "Folder that holds truetype/roboto and truetype/dejavu")
      ->capture_default_str();
  command->add_option("--log", log, "How messages are written: plain or json, one object a line")
      ->check(CLI::IsMember({"plain", "json"}))
      ->capture_default_str();
  command->add_flag("-q", settings.quiet, "Only errors");
  command->add_flag("-v", settings.verbose, "Also what is being done");
}

void add_packet_options(CLI::App* command, Settings& settings, bool one = true) {
  command->add_option("--paper", settings.paper, "letter or a4; wins over the project")->check(CLI::IsMember({"letter", "a4"}));
  command->add_option("--sheets", settings.sheets, "Which set: pin-up, binder or group; wins over the project")
      ->check(CLI::IsMember({"pin-up", "binder", "group"}));
  if (one)
    command->add_option("--since", settings.since, "An older project file or figures.json: adds the sheet of what changed");
}

void add_effort(CLI::App* command, Settings& settings) {
  command
      ->add_option("--effort", settings.effort,
                   "How long to look for a shorter lay: quick, usual or patient; counted in steps, never in seconds")
      ->check(CLI::IsMember({"quick", "usual", "patient"}))
      ->capture_default_str();
  command->add_option("--threads", settings.threads, "How many threads look for it; the lay is the same with any number")
      ->check(CLI::Range(1, 256))
      ->capture_default_str();
}

void add_size(CLI::App* command, Settings& settings) {
  command->add_option("--size", settings.size,
                      "Which size is made: a label of the project's sizes, nearest, larger or between; wins over the project");
}

void add_service_options(CLI::App* command, Settings& settings) {
  command->add_option("--out", settings.output, "The folder that packets go to; made when it is not there")->required();
  command
      ->add_option("--jobs", settings.jobs,
                   "How many packets are made at once; 0: as many as there are processors, and never more")
      ->check(CLI::Range(0, 4096))
      ->capture_default_str();
  command
      ->add_option("--time-limit", settings.time_limit,
                   "Seconds that one project may take: 300, or 1800 with --effort patient, unless given")
      ->check(CLI::Range(1, 86400));
  command->add_option("--memory-limit", settings.memory_limit, "MiB that one project may have")
      ->check(CLI::Range(64, 65536))
      ->capture_default_str();
  command->add_flag("--keep-lays,!--no-lays", settings.keep_lays,
                    "Keep lays, which take longest, for when a packet is made again (it does); they are the same without");
  command->add_flag("--trust-paths", settings.trust_paths,
                    "Follow links, and let projects name drawings anywhere; not for files of strangers");
}

int run_parsed(int argc, const char* const* argv) {
  Settings settings;
  settings.template_folder = from_environment("GOWNSHEAF_TEMPLATES", GOWNSHEAF_TEMPLATE_ROOT);
  settings.font_root = from_environment("GOWNSHEAF_FONTS", GOWNSHEAF_FONT_ROOT);
  settings.threads = std::thread::hardware_concurrency() >= 2 ? 2 : 1;
  std::string log = "plain";

  CLI::App app{"Makes a printable construction packet from a costume maker's project file."};
  app.set_version_flag("--version", "gownsheaf " GOWNSHEAF_VERSION);
  app.require_subcommand(1);

  CLI::App* packet = app.add_subcommand("packet", "Make the packet (PDF) and its figures (JSON beside it)");
  add_common(packet, settings, log);
  add_size(packet, settings);
  add_packet_options(packet, settings);
  add_effort(packet, settings);
  packet->add_flag("--best-so-far", settings.best_so_far,
                   "An interrupt gives a packet of the best lays so far, marked as cut short; without it, it gives none");
  packet->add_option("-o,--output", settings.output, "The PDF to write; without it, beside the project");
  packet->footer("Example: gownsheaf packet dress.yaml -o dress.pdf --paper letter");

  CLI::App* check = app.add_subcommand("check", "Say everything that is wrong or doubtful; write nothing");
  add_common(check, settings, log);
  add_size(check, settings);
  check->footer("Example: gownsheaf check dress.yaml");

  CLI::App* figures = app.add_subcommand("figures", "Every figure as JSON on standard output");
  add_common(figures, settings, log);
  add_size(figures, settings);
  add_effort(figures, settings);
  figures->footer("Example: gownsheaf figures dress.yaml > dress.figures.json");

  CLI::App* start = app.add_subcommand("start", "Write a short commented project file to fill in");
  start->add_option("FILE", settings.output, "The file to write; must not be there yet")->required();
  start->add_option("--garment", settings.garment, "dress, bodice, skirt or petticoat")
      ->required()
      ->check(CLI::IsMember({"dress", "bodice", "skirt", "petticoat"}));
  start->footer("Example: gownsheaf start skirt.yaml --garment skirt");

  CLI::App* schema = app.add_subcommand("schema", "JSON Schema of the project file, for editors");
  schema->add_flag("--tables", settings.key_tables, "The key tables of docs/project-file.md instead");
  schema->footer("Example: gownsheaf schema > gownsheaf.schema.json");

  CLI::App* outlines = app.add_subcommand("outlines", "Which piece outlines a drawing holds, as JSON on standard output");
  outlines->add_option("FILE", settings.project, "The drawing, SVG")->required();
  outlines->add_option("--sheet", settings.output,
                       "A PDF to write: the outlines with a number in each, and what to write for it");
  outlines->add_option("--paper", settings.paper, "letter or a4")->check(CLI::IsMember({"letter", "a4"}));
  outlines->add_option("--fonts", settings.font_root, "Folder that holds truetype/roboto and truetype/dejavu")
      ->capture_default_str();
  outlines->add_option("--log", log, "How messages are written: plain or json, one object a line")
      ->check(CLI::IsMember({"plain", "json"}))
      ->capture_default_str();
  outlines->add_flag("-q", settings.quiet, "Only errors");
  outlines->footer("Example: gownsheaf outlines pieces.svg --sheet pieces.pdf");

  CLI::App* batch = app.add_subcommand("batch", "Make the packets of all projects below a folder; what is current is left");
  add_common(batch, settings, log, "FOLDER", "The folder of projects");
  add_packet_options(batch, settings, false);
  add_effort(batch, settings);
  add_service_options(batch, settings);
  batch->add_flag("--keep-going,!--stop-at-failure", settings.keep_going, "Go on after a project that failed (it does)");
  batch->add_option("--shard", settings.shard, "K/N: only the K-th of N shares, for work that is spread over machines");
  batch->add_option("--prune", settings.prune, "Packets whose project is gone: list them, or remove them")
      ->check(CLI::IsMember({"list", "remove"}));
  batch->footer("Example: gownsheaf batch projects --out packets --jobs 2");

  CLI::App* watch =
      app.add_subcommand("watch", "The service: make packets as projects arrive in a folder or change, until it is told to stop");
  add_common(watch, settings, log, "FOLDER", "The folder of projects");
  add_packet_options(watch, settings, false);
  add_effort(watch, settings);
  add_service_options(watch, settings);
  watch->add_option("--settle", settings.settle, "Milliseconds a file must be quiet before it is read")
      ->check(CLI::Range(2, 600'000))
      ->capture_default_str();
  watch
      ->add_option("--scan-every", settings.scan_every,
                   "Seconds between looks at everything, where files come from another machine; 0: never")
      ->check(CLI::Range(0, 86'400))
      ->capture_default_str();
  watch->add_option("--health", settings.health, "A file that is written when its state changes and every 10 seconds");
  watch->add_flag("--once", settings.once, "Look at everything once, then end");
  watch->footer("Example: gownsheaf watch projects --out packets --health /run/gownsheaf.json");

  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& done) {  // --help, --version
    return app.exit(done);
  } catch (const CLI::ParseError& wrong) {
    app.exit(wrong);
    return 2;
  }
  settings.log = log == "json" ? LogForm::json : LogForm::plain;

  if (packet->parsed()) return run_packet(settings);
  if (check->parsed()) return run_check(settings);
  if (figures->parsed()) return run_figures(settings);
  if (start->parsed()) return run_start(settings);
  // Many packets at once serve better than many threads for each.
  if ((watch->parsed() && watch->count("--threads") == 0) || (batch->parsed() && batch->count("--threads") == 0))
    settings.threads = 1;
  if (watch->parsed()) return run_watch_command(settings);
  if (batch->parsed()) return run_batch_command(settings);
  if (outlines->parsed()) return run_outlines(settings);
  return run_schema(settings);
}

}  // namespace

int run_program(int argc, const char* const* argv) {
  try {
    return run_parsed(argc, argv);
  } catch (const std::exception& fault) {
    Settings plain;
    say_fault(plain, std::string("This is a fault of the program, not of your file: ") + fault.what() + ". Nothing was written.");
    return 4;
  }
}

}  // namespace gownsheaf
