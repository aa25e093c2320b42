#include "make_packet.h"

#include <algorithm>

#include "calculate/facts.h"
#include "calendar_events.h"
#include "check/check.h"
#include "check/key_spec.h"
#include "files/files.h"
#include "older_figures.h"
#include "packet/compose.h"
#include "read/entry.h"
#include "unicode/utf8.h"

namespace gownsheaf {
namespace {

// What every command needs first: the project read, checked and worked out.
struct Understood {
  Project project;
  std::shared_ptr<const Templates> templates;
  Worked worked;
  std::string project_hash;
};

// Letters that no face holds would print as empty boxes, so they are refused where they are written.
void refuse_unprintable(const Entry& entry, const FontSet& fonts, Diagnostics& diag) {
  const auto check = [&](const std::string& text, const SourceSpan& at) {
    for (const char32_t c : not_covered(fonts, text)) {
      diag.error("no-letter", at, "No font here holds " + encode_utf8(c) + ".", "write it in Latin letters");
    }
  };
  check(entry.key, entry.key_at);
  check(entry.text, entry.at);
  for (const Entry& child : entry.children) refuse_unprintable(child, fonts, diag);
}

// A drawing that cannot be read counts too: when it is there later, the packet is another.
std::string with_drawing(const std::string& mark, const std::optional<std::string>& drawing) {
  return sha256(mark + (drawing ? sha256(*drawing) : "unread"));
}

// Whether every letter is of ASCII or the Latin-1 Supplement (U+00A0 to U+00FF, not the soft hyphen). All faces hold
// these (tests/fonts checks it), so that a plain file needs no font opened to be checked.
bool plain_latin(const std::string& bytes) {
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    const auto byte = static_cast<unsigned char>(bytes[i]);
    if (byte < 0x80) continue;
    const auto next = i + 1 < bytes.size() ? static_cast<unsigned char>(bytes[i + 1]) : 0;
    const bool latin_1 = (byte == 0xC2 && next >= 0xA0 && next != 0xAD) || byte == 0xC3;
    if (!latin_1) return false;
    ++i;
  }
  return true;
}

// Those of all packets, or opened here for this one.
struct Fonts {
  std::unique_ptr<FontSet> own;
  const FontSet* set = nullptr;
};

Fonts fonts_or_fault(const Order& order, Made& made) {
  if (order.shared != nullptr) return {nullptr, order.shared->fonts.get()};
  FontFault fault;
  std::unique_ptr<FontSet> fonts = open_fonts(order.font_root, fault);
  if (!fonts) {
    made.readable = false;
    made.fault = fault.sentence;
  }
  const FontSet* set = fonts.get();
  return {std::move(fonts), set};
}

std::shared_ptr<const Templates> templates_or_fault(const std::string& folder, Diagnostics& diag,
                                                    std::vector<SourceText>& sources, std::string& fault) {
  Diagnostics faults;  // the maker's file is not to blame for these
  auto templates = std::make_shared<const Templates>(load_templates(folder, faults, sources));
  if (!faults.has_errors() && !templates->sets.empty()) return templates;
  for (const Diagnostic& d : faults.sorted()) diag.add(d);
  fault = "The packet templates in " + folder + " could not be used.";
  return nullptr;
}

std::string template_marks(const Templates& templates) {
  std::string all;
  for (const auto& [name, hash] : templates.fingerprints) all += name + " " + hash + "\n";
  return sha256(all);
}

// Reads, checks and calculates. Fonts are opened here only when the text needs them looked at.
Understood understand(const Order& order, const WorkOptions& work, Made& made, Diagnostics& diag) {
  Understood u;
  const FileResult<std::string> bytes = read_project(order);
  if (!bytes.ok()) {
    made.readable = false;
    made.fault = bytes.fault.sentence;
    return u;
  }
  u.project_hash = project_mark(*bytes.value, {});
  if (order.when_read) order.when_read(u.project_hash, made.drawings);
  made.sources.push_back(lines_of(*bytes.value, order.project_path));
  const Entry source = read_yaml(*bytes.value, order.project_path, diag, {.keys = key_words()});
  if (order.shared != nullptr) {
    u.templates = order.shared->templates;
  } else {
    u.templates = templates_or_fault(order.template_folder, diag, made.sources, made.fault);
    if (!u.templates) {
      made.readable = false;
      return u;
    }
  }
  if (source.kind == Entry::Kind::nothing) return u;
  u.project = check_project(source, *u.templates, diag, order.size, [&](const std::string& relative) {
    const std::string folder = folder_of(order.project_path);
    const std::string path = folder == "." ? relative : folder + "/" + relative;
    FileResult<std::string> drawing = read_drawing(order, relative);
    u.project_hash = with_drawing(u.project_hash, drawing.value);
    made.drawings.push_back(relative);
    if (order.when_read) order.when_read(u.project_hash, made.drawings);
    if (!drawing.ok()) return DrawingFile{{}, drawing.fault.sentence, path};
    made.sources.push_back(drawing_lines(*drawing.value, path));
    return DrawingFile{std::move(*drawing.value), "", path};
  });
  u.project.file = order.project_path;
  if (!plain_latin(*bytes.value)) {
    const Fonts fonts = fonts_or_fault(order, made);
    if (fonts.set == nullptr) return u;
    refuse_unprintable(source, *fonts.set, diag);
  }
  u.worked = calculate(u.project, *u.templates, work, diag);
  return u;
}

std::string set_word(const std::string& name) {
  std::string word = name;
  if (!word.empty() && word[0] >= 'a' && word[0] <= 'z') word[0] = static_cast<char>(word[0] - 'a' + 'A');
  return word + " set";
}

FigureFile about(const Order& order, const Understood& u, const PacketSet* set, const Older& older = {}) {
  FigureFile file;
  file.project_fingerprint = u.project_hash;
  file.templates_fingerprint = template_marks(*u.templates);
  file.options = "lay work " + std::to_string(order.work.lay_work) + ", paper " + order.paper.value_or("of the project") +
                 ", set " + (set ? set->name : order.sheets.value_or("of the project"));
  if (std::any_of(u.project.pieces.begin(), u.project.pieces.end(), [](const Piece& p) { return p.drawn.has_value(); }))
    file.options += ", outline work " + std::to_string(order.work.outline_work);
  // What the file says anyway is no option: the packet is then the same, to the byte.
  if (order.size && u.project.size.known() && u.project.size.at.line == 0) file.options += ", size " + *u.project.size;
  if (std::any_of(u.worked.plans.lays.begin(), u.worked.plans.lays.end(), [](const LayPlan& lay) { return lay.cut_short; }))
    file.options += ", lays cut short";
  if (!older.fingerprint.empty()) file.options += ", since " + older.fingerprint;
  file.hide_private = set != nullptr && !set->private_shown;
  file.shared = set != nullptr && set->shared;
  if (file.shared) {
    file.project_fingerprint.clear();
    file.options = "paper " + order.paper.value_or("of the project") + ", set " + set->name;
  }
  return file;
}

// Of a set for others the packet's mark is made of what the packet holds: one made of the project file would let anybody
// who guesses a measure try whether the guess is right.
void mark_of_content(FigureFile& file, const std::string& pages, const std::string& figures) {
  file.project_fingerprint = sha256(pages + figures);
}

std::string fingerprint(const FigureFile& file) {
  return sha256(file.project_fingerprint + "\n" + file.templates_fingerprint + "\n" + file.options);
}

std::string initials(const std::string& name) {
  std::string out;
  bool first = true;
  for (const char32_t c : decode_utf8(name)) {
    const bool parts = c == U' ' || c == U'\u00A0' || c == U'-' || c == U'.';
    if (first && !parts) out += (out.empty() ? "" : " ") + encode_utf8(c) + ".";
    first = parts;
  }
  return out;
}

PacketFacts facts_for_list(const Understood& u, bool shared, const std::vector<Diagnostic>& messages) {
  PacketFacts about;
  about.title = u.project.title;
  about.shared = shared;
  if (!shared && u.project.wearer.name.known()) about.wearer = initials(*u.project.wearer.name);
  const ShownIn shown = u.project.show_lengths_in.known() ? *u.project.show_lengths_in : ShownIn::inches;
  for (const Cloth& cloth : u.project.cloths)
    if (const Figure* needed = u.worked.figures.find("cloths/" + cloth.named.name + "/needed");
        needed != nullptr && !(shared && needed->is_private))
      about.cloths.push_back({cloth.named.name, plain_text(*needed, shown)});
  for (const Diagnostic& d : messages) {
    if (!d.accepted_because.empty() || (shared && d.is_private)) continue;
    about.holds += d.severity == Severity::hold ? 1 : 0;
    about.warnings += d.severity == Severity::warning ? 1 : 0;
  }
  return about;
}

PageShape shape_for(const Project& project, const std::optional<std::string>& paper_option) {
  const bool a4 = paper_option ? *paper_option == "a4" : project.print.paper.known() && *project.print.paper == Paper::a4;
  HoleCount holes = a4 ? HoleCount::two : HoleCount::three;
  if (project.print.holes.known() && project.print.holes.origin == Origin::written) {
    holes = *project.print.holes == Holes::none  ? HoleCount::none
            : *project.print.holes == Holes::two ? HoleCount::two
                                                 : HoleCount::three;
  }
  return page_shape(a4 ? PaperName::a4 : PaperName::letter, holes);
}

}  // namespace

std::string project_mark(std::string_view project, const std::vector<std::optional<std::string>>& drawings) {
  std::string mark = sha256(project);
  for (const std::optional<std::string>& drawing : drawings) mark = with_drawing(mark, drawing);
  return mark;
}

FileResult<std::string> read_project(const Order& order) {
  if (order.confined_below.empty()) return read_named_file(order.project_path, kLargestProjectFile);
  const std::string root = order.confined_below == "/" ? "/" : order.confined_below + "/";
  if (!order.project_path.starts_with(root))
    return {std::nullopt, {"`" + order.project_path + "` lies outside the folder `" + order.confined_below + "`."}};
  return read_below(order.confined_below, order.project_path.substr(root.size()), kLargestProjectFile, Links::refused);
}

FileResult<std::string> read_drawing(const Order& order, const std::string& relative) {
  const std::string folder = folder_of(order.project_path);
  if (order.trust_paths) return read_named_file(relative.starts_with("/") ? relative : folder + "/" + relative, kLargestDrawing);
  return read_below(folder, relative, kLargestDrawing, order.confined_below.empty() ? Links::inside : Links::refused);
}

std::optional<LoadedOnce> load_shared(const std::string& template_folder, const std::string& font_root, Diagnostics& diag,
                                      std::vector<SourceText>& sources, std::string& fault) {
  LoadedOnce shared;
  shared.templates = templates_or_fault(template_folder, diag, sources, fault);
  if (!shared.templates) return std::nullopt;
  FontFault no_fonts;
  shared.fonts = open_fonts(font_root, no_fonts);
  if (!shared.fonts) {
    fault = no_fonts.sentence;
    return std::nullopt;
  }
  shared.template_marks = template_marks(*shared.templates);
  shared.font_marks = made_with(*shared.fonts);
  return shared;
}

Made check_only(const Order& order, Diagnostics& diag) {
  Made made;
  WorkOptions quick = order.work;
  quick.search_all = false;
  understand(order, quick, made, diag);
  return made;
}

Made make_figures(const Order& order, Diagnostics& diag) {
  Made made;
  const Understood u = understand(order, order.work, made, diag);
  if (!made.readable || diag.has_errors()) return made;
  const ShownIn shown = u.project.show_lengths_in.known() ? *u.project.show_lengths_in : ShownIn::inches;
  made.figures_json = figures_json(u.worked.figures, u.worked.plans, shown, about(order, u, nullptr));
  return made;
}

Made make_packet(const Order& order, Diagnostics& diag) {
  Made made;
  const Older older = read_older(order, made, diag);
  if (!made.readable || diag.has_errors()) return made;
  WorkOptions work = order.work;
  work.since = older.figures ? &*older.figures : nullptr;
  const Understood u = understand(order, work, made, diag);
  made.project_mark = u.project_hash;
  if (!made.readable || diag.has_errors()) return made;
  made.interrupted = !order.best_so_far && work.watch != nullptr && work.watch->stop != nullptr && work.watch->stop->load();
  if (made.interrupted) return made;

  const std::string wanted = order.sheets.value_or(u.project.print.sheets.known() ? *u.project.print.sheets : "binder");
  const PacketSet* set = u.templates->set(wanted);
  if (set == nullptr) {
    made.unavailable = "The set `" + wanted + "` is not there yet.";
    return made;
  }
  const Fonts chosen = fonts_or_fault(order, made);
  if (chosen.set == nullptr) return made;
  const FontSet* fonts = chosen.set;

  FigureFile file = about(order, u, set, older);
  file.made_with = made_with(*fonts);
  const ShownIn shown = u.project.show_lengths_in.known() ? *u.project.show_lengths_in : ShownIn::inches;
  const Typesetter typesetter(*fonts, set->reads_from > Length::mm(500) ? pin_up_scale() : binder_scale());
  const PageShape shape = shape_for(u.project, order.paper);
  const FactLookup facts = facts_of(u.project, u.worked.figures, u.worked.plans);
  const std::vector<Diagnostic> messages = diag.sorted();
  const std::vector<Sheet> sheets =
      compose_packet({u.project, u.worked.figures, u.worked.plans, *set, facts, messages, typesetter, shape,
                      u.worked.changes ? &*u.worked.changes : nullptr, &u.templates->closing});
  if (file.shared) {
    const PaperDocument unmarked = lay_out(sheets, shape, {u.project.title, set_word(set->name)}, typesetter);
    mark_of_content(file, page_listing(unmarked), figures_json(u.worked.figures, u.worked.plans, shown, file));
  }
  const Running running{u.project.title, set_word(set->name) + ", packet " + fingerprint(file).substr(0, 4)};
  PaperDocument document = lay_out(sheets, shape, running, typesetter);
  document.title = u.project.title;
  document.subject = "Construction packet, " + running.set_and_packet;

  std::variant<std::string, WriteFault> pdf = write_pdf(document, *fonts);
  if (const WriteFault* fault = std::get_if<WriteFault>(&pdf)) {
    made.readable = false;
    made.fault = fault->sentence;
    return made;
  }
  made.pdf = std::move(std::get<std::string>(pdf));
  if (order.keep_document != nullptr) *order.keep_document = document;
  if (order.with_listing) made.listing = page_listing(document);
  made.figures_json = figures_json(u.worked.figures, u.worked.plans, shown, file);
  if (!file.shared) made.calendar = work_calendar(u.project, u.worked.figures, u.worked.plans);
  made.pages = static_cast<int>(document.pages.size());
  made.about = facts_for_list(u, file.shared, messages);
  return made;
}

}  // namespace gownsheaf
