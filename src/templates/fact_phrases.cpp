// Facts in the trade's words, as they follow `if` on a step: each for yes and for no.
#include "templates/condition.h"

namespace gownsheaf {
namespace {

struct Phrase {
  std::string_view fact, word, yes, no;
};

constexpr Phrase kPhrases[] = {
    {"bodice", "", "there is a bodice", "there is no bodice"},
    {"skirt", "", "there is a skirt", "there is no skirt"},
    {"sleeves", "", "there are sleeves", "there are no sleeves"},
    {"legs", "", "there are legs", "there are no legs"},
    {"collar", "", "there is a collar", "there is no collar"},
    {"band", "", "there is a band", "there is no band"},
    {"petticoat", "", "there is a petticoat", "there is no petticoat"},
    {"corset", "", "there is a corset", "there is no corset"},
    {"joined at waist", "", "bodice and skirt are sewn together at the waist", "bodice and skirt are worn apart"},
    {"fitted", "", "it fits with 2 in of ease or less", "it is loose everywhere, with more than 2 in of ease"},
    {"nap", "", "a cloth has a nap or one way up", "every cloth may lie either way up"},
    {"never wet", "", "a cloth must never be wetted", "every cloth may be wetted"},
    {"shrunk already", "", "the cloth was shrunk before it was measured", "the cloth is not shrunk yet"},
    {"cloth short", "", "there is too little of the cloth", "there is enough of the cloth"},
    {"shrinkage differs", "", "the layers of a piece shrink apart", "the layers of each piece shrink alike"},
    {"interlined bodice", "", "the bodice is interlined", "the bodice is not interlined"},
    {"skirt interlined", "", "the skirt is interlined", "the skirt is not interlined"},
    {"princess seams", "", "it has princess seams", "it has no princess seams"},
    {"bias edge", "", "an edge grows when it is handled", "no edge grows when it is handled"},
    {"boned", "", "it is boned", "it is not boned"},
    {"piping", "", "it is piped", "it is not piped"},
    {"binding", "", "it is bound", "it is not bound"},
    {"hem stiffening", "", "the hem is stiffened", "the hem is not stiffened"},
    {"hem facing", "", "the hem is faced", "the hem is not faced"},
    {"hem braid", "", "a braid goes round the hem", "no braid goes round the hem"},
    {"placket", "", "there is a placket", "there is no placket"},
    {"pocket", "", "there is a pocket", "there is no pocket"},
    {"pleats", "", "there are pleats", "there are no pleats"},
    {"trims", "", "there are trims", "there are no trims"},
    {"lace", "", "there is lace", "there is no lace"},
    {"flounces", "", "there are flounces", "there are no flounces"},
    {"seam left open", "", "a whole seam is left open for the pleating", "no seam is left open for the pleating"},
    {"drapery", "", "there is drapery", "there is no drapery"},
    {"drapery foundation", "", "the drapery has a foundation", "the drapery has no foundation"},
    {"darts", "", "there are darts", "there are no darts"},
    {"bones", "", "there are bones", "there are no bones"},
    {"cloth care", "wash", "the cloth may be washed", "the cloth may not be washed"},
    {"cloth care", "steam", "the cloth may only be steamed", "the cloth may be more than steamed"},
    {"cloth care", "dry clean", "the cloth is dry cleaned", "the cloth is not dry cleaned"},
    {"cloth care", "never wet", "the cloth must never be wetted", "the cloth may be wetted"},
    {"lining", "none", "it has no lining", "it has a lining"},
    {"lining", "flat", "the lining is sewn in flat, one with its cloth", "the lining is not sewn in flat"},
    {"lining", "bagged", "the lining is bagged out", "the lining is not bagged out"},
    {"skirt levelled at", "waist", "the skirt is levelled at the waist", "the skirt is not levelled at the waist"},
    {"skirt levelled at", "hem", "the skirt is levelled at the hem", "the skirt is not levelled at the hem"},
};

}  // namespace

std::string asked_of(const FactKind& fact, std::string_view word, bool turned) {
  for (const Phrase& p : kPhrases)
    if (p.fact == fact.name && p.word == word) return std::string(turned ? p.no : p.yes);
  const std::string name(fact.name);
  if (!word.empty()) return "the " + name + (turned ? " is not " : " is ") + std::string(word);
  if (fact.type == FactType::yes_no) return (turned ? "it is not so that " : "") + std::string(fact.meaning);
  if (fact.type == FactType::count) return (turned ? "there are no " : "there are ") + name;
  return (turned ? "there is no " : "there is a ") + name;
}

}  // namespace gownsheaf
