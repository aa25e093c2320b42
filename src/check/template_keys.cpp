#include "check/template_keys.h"

namespace gownsheaf {
namespace {

using V = TemplateValue;
constexpr std::string_view kSheets =
    "at a glance|what changed|contents|to buy|cutting list|cutting layouts|pleats|closures|closure reinforcement|bones|"
    "size and fit|fitting checklist|order of work|calendar|what waits|cautions|how it was worked out";
constexpr std::string_view kLabels = "a|b|c|x";

}  // namespace

const std::vector<TemplateKey>& template_keys() {
  static const std::vector<TemplateKey> keys{
      {"set", "set", V::text, true, "pin-up|binder|group", "the packet set this file describes"},
      {"set", "format", V::number, true, "", "the format's number: 1"},
      {"set", "reads from", V::length, true, "", "from how far it is read; the type sizes follow"},
      {"set", "private", V::word, true, "shown|hidden", "whether body measures and what is worked from them print"},
      {"set", "shared", V::word, false, "yes|no",
       "whether it is given to others: then no line number and no fingerprint of the project file goes with it"},
      {"set", "sheets", V::blocks, true, "", "the sheets, in the order they print"},
      {"sheet", "sheet", V::word, true, kSheets, "which sheet"},
      {"sheet", "title", V::text, true, "", "its title; may hold {title}, {run}, {cloth}, {closure}, {fitting}"},
      {"sheet", "for each", V::word, false, "run|cloth|closure|fitting", "one sheet for each of these"},
      {"sheet", "when", V::condition, false, "", "printed only when this holds"},
      {"sheet", "steps", V::text, false, "", "order of work: only the next few, `next 8`"},
      {"sheet", "keep", V::word, false, "one page", "never parted over two pages"},

      {"steps", "steps", V::text, true, "", "what these steps are about"},
      {"steps", "format", V::number, true, "", "the format's number: 1"},
      {"steps", "list", V::blocks, true, "", "the steps, in the order they come when nothing else settles it"},
      {"step", "step", V::id, true, "", "the step's id: small letters and hyphens"},
      {"step", "say", V::text, true, "", "the act, verb first; may hold {…} figures"},
      {"step", "plainly", V::text, false, "", "the act without figures: said where one of them is not known"},
      {"step", "shows", V::texts, false, "", "figures printed at the right, one a line, at most three"},
      {"step", "when", V::condition, false, "", "the step is there only when this holds"},
      {"step", "for each", V::word, false, "cloth|run|piece|closure|bone", "the step is repeated for each of these"},
      {"step", "after", V::blocks, false, "", "steps that come first"},
      {"step", "with", V::id, false, "", "a step of the same sitting"},
      {"step", "replaces", V::id, false, "", "a step whose place this one takes where its condition holds"},
      {"step", "gate", V::text, false, "", "the fitting that must be signed here"},
      {"step", "cannot undo", V::word, false, "cuts good cloth|trims an allowance|shuts access|pierces cloth|sets the cloth",
       "what can never be taken back"},
      {"step", "uses", V::texts, false, "", "what must lie ready"},
      {"step", "needs", V::texts, false, "table|machine|iron|second person|wearer|form|quiet", "place, tool or person"},
      {"step", "hours", V::block, false, "", "how long it takes"},
      {"step", "rests", V::span, false, "", "days that pass before the next step: it dries, or hangs"},
      {"step", "stop", V::text, false, "", "where it can be laid down safely: after any seam"},
      {"step", "may be left out", V::yes_no, false, "", "whether it gives way when the days are short"},
      {"step", "sheet", V::word, false, kSheets, "the sheet to take to it"},
      {"step", "source", V::text, false, "", "an anchor of docs/sources.md"},
      {"step", "label", V::word, true, kLabels, "a read, b from memory, c common practice, x arithmetic"},
      {"after", "id", V::id, true, "", "the step that comes first"},
      {"after", "because", V::text, true, "", "what goes wrong otherwise; printed as the reason"},
      {"after", "hard", V::yes_no, false, "", "whether the order must hold; else it is a wish"},
      {"hours", "each", V::span, true, "", "time for one"},
      {"hours", "times", V::text, false, "", "a {…} figure: how many"},
      {"hours", "plus", V::span, false, "", "time beside that, however many"},
      {"hours", "else", V::span, false, "", "time for the whole, where the figure is not known"},
      {"hours", "rate", V::text, false, "", "the maker's own pace that takes its place"},
      {"hours", "label", V::word, true, kLabels, "where the time comes from"},

      {"fitting checks", "fitting checks", V::text, true, "", "what these checks are of"},
      {"fitting checks", "format", V::number, true, "", "the format's number: 1"},
      {"fitting checks", "list", V::blocks, true, "", "the gates, in the order they are come to"},
      {"gate", "gate", V::text, true, "", "the gate's name, as a step has it"},
      {"gate", "title", V::text, true, "", "how the page is called"},
      {"gate", "when", V::condition, false, "", "the page is there only when this holds"},
      {"gate", "wear", V::texts, false, "", "what is worn beyond the layers that were measured over"},
      {"gate", "look", V::blocks, true, "", "what is looked at, one line each"},
      {"gate", "moves", V::texts, false, "", "movements that are tried"},
      {"line", "at", V::text, true, "", "what is looked at"},
      {"line", "how", V::text, true, "", "how it is measured or seen"},
      {"line", "allowed", V::text, true, "", "the range that is right; may hold {1/4 in} and whole figures"},
      {"line", "plainly", V::text, false, "", "the range without figures: said where one of them is not known"},
      {"line", "remedy", V::text, true, "", "what to do when it is not right; may hold {1/4 in} and whole figures"},
      {"line", "remedy plainly", V::text, false, "", "the remedy without figures"},
      {"line", "when", V::condition, false, "", "the line is there only when this holds"},
      {"line", "source", V::text, false, "", "an anchor of docs/sources.md"},
      {"line", "label", V::word, true, kLabels, "a read, b from memory, c common practice, x arithmetic"},

      {"cautions", "cautions", V::text, true, "", "what these cautions are about"},
      {"cautions", "format", V::number, true, "", "the format's number: 1"},
      {"cautions", "list", V::blocks, true, "", "the cautions, the gravest first"},
      {"caution", "about", V::text, true, "", "what it is about, in a word or two"},
      {"caution", "say", V::text, true, "", "the caution; may hold {3 in}"},
      {"caution", "defers to", V::text, true, "", "whose word goes before the packet's"},
      {"caution", "when", V::condition, false, "", "printed when this holds or cannot be told"},
      {"caution", "source", V::text, false, "", "an anchor of docs/sources.md"},
      {"caution", "label", V::word, true, kLabels, "a read, b from memory, c common practice, x arithmetic"},

      {"cloth kinds", "cloth kinds", V::text, true, "", "what these cloths have in common"},
      {"cloth kinds", "format", V::number, true, "", "the format's number: 1"},
      {"cloth kinds", "list", V::blocks, true, "", "the kinds"},
      {"cloth kind", "kind", V::text, true, "", "its name"},
      {"cloth kind", "also", V::texts, false, "", "other names for it"},
      {"cloth kind", "width", V::length, false, "", "selvage to selvage"},
      {"cloth kind", "weight", V::weight, false, "", "weight of the cloth"},
      {"cloth kind", "thickness", V::length, false, "", "thickness of one layer"},
      {"cloth kind", "shrinks", V::percent, false, "", "along the cloth, the first time it is wetted"},
      {"cloth kind", "care", V::word, false, "wash|steam|dry clean|never wet", "how it may be cleaned"},
      {"cloth kind", "frays", V::length, false, "", "the least seam it holds in"},
      {"cloth kind", "stiffness", V::word, false, "limp|soft|crisp|stiff|board", "how it hangs"},
      {"cloth kind", "lay", V::word, false, "either way|one way|bias|any way", "which way its pieces may lie"},
      {"cloth kind", "press", V::text, false, "", "how it is pressed"},
      {"cloth kind", "label", V::word, true, kLabels, "where the figures come from"},

      {"closing rules", "rule", V::text, true, "closing reinforcement", "what the rule is for"},
      {"closing rules", "format", V::number, true, "", "the format's number: 1"},
      {"closing rules", "bands", V::blocks, true, "", "bands of strength, the weakest first"},
      {"closing rules", "carried", V::blocks, true, "", "how a skirt may be carried, the best first"},
      {"closing rules", "notes", V::blocks, true, "", "how each kind is sewn on"},
      {"closing rules", "inspect", V::blocks, true, "", "what to look for after wearing"},
      {"closing band", "band", V::word, true, "R0|R1|R2|R3|R4", "its name"},
      {"closing band", "words", V::text, true, "", "what it is like"},
      {"closing band", "pitch", V::length, true, "", "distance between two fasteners, at most"},
      {"closing band", "edge", V::text, true, "", "what strengthens the edge"},
      {"closing band", "rows", V::number, true, "", "rows of stitching"},
      {"closing band", "bones", V::text, true, "", "bones beside the edge"},
      {"closing band", "source", V::text, false, "", "an anchor of docs/sources.md"},
      {"closing band", "label", V::word, true, kLabels, "where it comes from"},
      {"carried", "hangs from", V::word, true, "hooks|bodice waist|bodice and stay|own band|straps|nothing",
       "what carries the skirt"},
      {"carried", "say", V::text, true, "", "what to know of it"},
      {"carried", "source", V::text, false, "", "an anchor of docs/sources.md"},
      {"carried", "label", V::word, true, kLabels, "where it comes from"},
      {"closing note", "fasten", V::word, true,
       "any|hooks and eyes|hooks and bars|hooks and loops|buttons|snaps|lacing|buckle|ties|drawstring|busk",
       "what it closes with"},
      {"closing note", "from", V::word, false, "R0|R1|R2|R3|R4", "printed from this band on"},
      {"closing note", "about", V::text, true, "", "what the note is about"},
      {"closing note", "say", V::text, true, "", "the note; may hold {closure:…} figures"},
      {"closing note", "plainly", V::text, false, "", "the note without figures"},
      {"closing note", "source", V::text, false, "", "an anchor of docs/sources.md"},
      {"closing note", "label", V::word, true, kLabels, "where it comes from"},
      {"inspect", "say", V::text, true, "", "what to look for"},
      {"inspect", "fasten", V::texts, false,
       "hooks and eyes|hooks and bars|hooks and loops|buttons|snaps|lacing|buckle|ties|drawstring|busk",
       "the closings it is looked for at; any when left out"},
      {"inspect", "label", V::word, true, kLabels, "where it comes from"},
  };
  return keys;
}

const TemplateKey* find_template_key(std::string_view block, std::string_view key) {
  for (const TemplateKey& k : template_keys())
    if (k.block == block && k.key == key) return &k;
  return nullptr;
}

std::vector<std::string_view> words_of(const TemplateKey& key) {
  std::vector<std::string_view> words;
  std::string_view left = key.words;
  while (!left.empty()) {
    const auto bar = left.find('|');
    words.push_back(left.substr(0, bar));
    left = bar == std::string_view::npos ? std::string_view{} : left.substr(bar + 1);
  }
  return words;
}

const std::vector<std::string_view>& sheet_words() {
  static const std::vector<std::string_view> words = words_of(*find_template_key("sheet", "sheet"));
  return words;
}

}  // namespace gownsheaf
