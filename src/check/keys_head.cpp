// Keys at the head of the file: who, what, when.
#include "check/key_row.h"

namespace gownsheaf {

void add_head_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("gownsheaf", count).must().limits("1", "").means("Number of the format that the file is written in: 1."),
      KeyRow("title", text).must().limits("1", "120").means("What the garment is called on every page."),
      KeyRow("worn on", day).means("The day the garment is worn."),
      KeyRow("today", day).means("The day that late and stale are counted from; without it nothing is called late."),
      KeyRow("show lengths in", word)
          .words("inches|centimetres")
          .guess("~ the unit written most, then the first")
          .means("The unit that the packet prints."),
      KeyRow("money in", text).since(kLater).means("The word printed after prices."),
      KeyRow("garment", word)
          .words("dress|bodice|skirt|petticoat|corset|spencer|coat|waistcoat|other")
          .guess("~ from `part of` of the pieces")
          .form("{ kind, features }")
          .means("The kind of garment; it picks steps and checks."),
      KeyRow("garment/kind", word)
          .words("dress|bodice|skirt|petticoat|corset|spencer|coat|waistcoat|other")
          .must()
          .since(kLater)
          .means("The kind of garment, in the short description."),
      KeyRow("garment/boned", yes_no).since(kLater).means("Whether the bodice is boned."),
      KeyRow("garment/closes at", word).words("centre front|centre back|side").since(kLater).means("Where it closes."),
      KeyRow("garment/fasten", word)
          .words("hooks and eyes|hooks and bars|hooks and loops|buttons|snaps|lacing|buckle|ties|drawstring|busk")
          .since(kLater)
          .means("What it closes with."),
      KeyRow("garment/sleeves", word).words("none|short|long").since(kLater).means("How long the sleeves are."),
      KeyRow("garment/piped edges", list).each(text).since(kLater).means("Edges that are piped."),
      KeyRow("garment/breadths", count).since(kLater).means("How many breadths of cloth the skirt has."),
      KeyRow("garment/fullness", ratio).since(kLater).means("Skirt width for each unit of waist."),
      KeyRow("garment/pleats", word)
          .words("knife|box|inverted|double box|cartridge|gathers|tucks|plain|inverted at seams")
          .since(kLater)
          .means("How the skirt's fullness is taken in."),
      KeyRow("garment/interlined", yes_no).since(kLater).means("Whether the skirt is interlined."),
      KeyRow("garment/pocket", yes_no).since(kLater).means("Whether the skirt has a pocket."),
      KeyRow("garment/drapery", word).words("none|fixed|tacked|detachable").since(kLater).means("How drapery is held."),
      KeyRow("joined at waist", yes_no).guess("~ yes for a dress").means("Whether bodice and skirt are joined at the waist."),
      KeyRow("worn for", any_of_these)
          .words("street|standing|dancing|stairs|stage|near flame|sitting|outdoors")
          .means("What is done in the garment."),
      KeyRow("lining sewn in", word)
          .words("flat|bagged|none")
          .is("~ flat where a piece has a lining", 'a')
          .means("Whether a lining is sewn in with its outer cloth, or made apart and bagged."),
      KeyRow("pattern", word)
          .words("own|bought")
          .is("own", 'c')
          .since(kLater)
          .means("Whose pattern it is; outlines of a bought one are not passed on."),
      KeyRow("wearer", block).secret().means("Who wears it."),
      KeyRow("wearer/name", text).secret().means("The wearer's name."),
      KeyRow("wearer/age", count).secret().limits("1", "110").means("The wearer's age in years."),
      KeyRow("still to make", list).each(block, "layer").means("Underlayers that are not finished yet."),
      KeyRow("still to make/*/layer", text).must().means("What the layer is."),
      KeyRow("still to make/*/ready by", day).means("When it is ready."),
      KeyRow("people", list).each(block, "person").secret().since(kLater).means("Several wearers of one project."),
      KeyRow("people/*/person", name).must().secret().means("What the person is called here."),
      KeyRow("people/*/age", count).secret().limits("1", "110").means("Age in years."),
      KeyRow("people/*/measures", map).each(length).of("measures").secret().means("Measures of this person."),
      KeyRow("people/*/ease", map)
          .each(length)
          .of("measures")
          .limits("-20 in", "40 in")
          .secret()
          .means("Ease wanted by this person."),
      KeyRow("people/*/size", text).secret().means("Size of this person."),
      KeyRow("views", map).each(block, "view").since(kLater).means("Versions of the garment that one file holds."),
      KeyRow("views/*/leave out", list).each(text).means("Names that this view does without."),
      KeyRow("views/*/*", any_of_these).means("Any section that this view replaces."),
      KeyRow("view", name).of("views").since(kLater).means("Which view is made."),
      KeyRow("accept", list).each(block, "decision").means("Holds and warnings that the maker has decided."),
      KeyRow("accept/*/code", text).must().means("Code of the message, as printed in square brackets."),
      KeyRow("accept/*/at", text).means("Name of the item that the message is about."),
      KeyRow("accept/*/because", text).must().limits("10", "200").means("Why it is right as it is, in ten letters or more."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

void add_rules_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  const std::vector<KeySpec> rows = {
      KeyRow("rules", block).means("The maker's choice where published sources disagree."),
      KeyRow("rules/yardage by", word).words("lay|width chart").is("lay", 'x').means("How cloth is reckoned."),
      KeyRow("rules/strips lose", word)
          .words("both seams|one seam")
          .is("both seams", 'x')
          .means("What a joined strip loses at each join."),
      KeyRow("rules/plaid extra", word)
          .words("by the lay|one repeat a piece")
          .is("by the lay", 'x')
          .means("How cloth for matching is added."),
      KeyRow("rules/pleat seams", word)
          .words("inner fold|as they fall")
          .is("inner fold", 'a')
          .means("Where breadth seams lie among pleats."),
      KeyRow("rules/hook pitch", length)
          .is("1 1/4 in", 'a')
          .limits("1/4 in", "3 in")
          .means("How far hooks stand apart at most, where a closing has no `at most`."),
      KeyRow("rules/hook set back", length).is("1/4 in", 'a').limits("0 in", "2 in").means("How far hooks sit behind the edge."),
      KeyRow("rules/buttonhole is", word)
          .words("across and thickness|and 1/8 in more|more for a shank")
          .is("across and thickness", 'a')
          .means("How long a buttonhole is cut."),
      KeyRow("rules/bone length is", word)
          .words("by its kind|casing less 1/2 in|casing and 1/2 in more")
          .is("by its kind", 'a')
          .means("How long a bone is cut for its casing, where no `end clear` is written."),
      KeyRow("rules/corset pressure", word)
          .words("measured 1910|measured 2011")
          .is("measured 1910", 'a')
          .means("How hard a corset presses, where neither `worn`, `pressure` nor ease says it."),
      KeyRow("rules/bias by", word)
          .words("real strips|joined strips|area|length along the selvage")
          .is("real strips", 'x')
          .since(kLater)
          .means("How bias strips are reckoned."),
      KeyRow("rules/piping strip", word)
          .words("by the cord|flat 1 1/4 in")
          .is("by the cord", 'x')
          .since(kLater)
          .means("How wide a piping strip is cut."),
      KeyRow("rules/allowances as", word).words("own|wool dress 1916").since(kLater).means("Whose allowances are used."),
      KeyRow("rules/thread by", word).words("formula|class ratio").since(kLater).means("How thread is reckoned."),
      KeyRow("rules/overedge base", count).limits("3", "5").since(kLater).means("Base ratio of an overedge seam: 3 or 5."),
      KeyRow("rules/thread waste", percent).is("15 %", 'a').since(kLater).means("Thread lost at starts and ends."),
      KeyRow("rules/waist is", word)
          .words("belt line|midway")
          .is("belt line", 'a')
          .means("Where the waist was measured; a closing round it breathes there."),
      KeyRow("rules/steps from", word)
          .words("library|this file")
          .is("library", 'x')
          .since(kLater)
          .means("Where the steps of work come from."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
