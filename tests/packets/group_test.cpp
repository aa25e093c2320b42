// The set for others: nothing private is in its pages, its PDF or its figures, with the workings printed. The same search
// over the binder finds what is private there, so that it would find it here too.
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "figures/privacy.h"
#include "make_packet.h"
#include "support/catch.h"
#include "support/pdf_tools.h"
#include "support/program.h"

namespace fs = std::filesystem;
using namespace gownsheaf;
using gownsheaf_test::kTop;

namespace {

// Odd measures that no cut, mark or lay comes to by itself. The folder has a telling name too.
const char* const kProject = R"(gownsheaf: 1
title: Skirt for the ferry landing
worn on: 2027-08-21
garment: skirt
wearer: { name: Wilhelmina Quickenborne, age: 67 }
people: [{ person: Ottoline Farthingale, age: 59 }]
measures:
  taken: { day: 2027-01-19, over: [chemise], measured by: Theophila Marchbanks }
  waist: 31 13/32 in
  hip: 46 19/32 in
  neck: 17 11/32 in
  upper arm: { left: 13 23/32 in, right: 14 7/32 in }
  other: { scar to waist: 9 29/32 in }
  waist to floor: { front: 47 5/32 in, side: 48 9/32 in, back: 49 25/32 in }
ease: { waist: 27/32 in, hip: 5 21/32 in }
finished girths: { neck: 18 3/32 in }
cloths:
  blue linen: { kind: dress linen, width: 56 in, shrinks: 5 %, bought: [3 yd], price: 73.91 per yd }
notions:
  skirt hooks: { kind: hooks and bars, size: no. 3, bought: 2, price: 8.47 each }
pieces:
  - { piece: skirt breadth, part of: skirt, make: 2, from: [blue linen], cut width: full, finished length: 40 in, hem: 2 in, top: 1 in, seam allowance: 1/2 in }
pleats:
  - { run: waist run, of: [skirt breadth], kind: knife, toward: centre back, finished: 30 in, count: 20, note: Fold it on the big table. }
work: { hours a week: 5 }
)";

// Every way one of the private lengths above could be written: as fraction, as set fraction of a listing, in decimals of
// both units to a few places, in ticks.
struct PrivateLength {
  int whole, numerator;
};  // 32nds of an inch
const std::vector<PrivateLength> kLengths = {{31, 13}, {46, 19}, {17, 11}, {13, 23}, {14, 7}, {9, 29},
                                             {47, 5},  {48, 9},  {49, 25}, {5, 21},  {18, 3}};

std::vector<std::string> ways_to_write(const PrivateLength& p) {
  const Length l = Length::inches(p.whole) + Length::inches(1).times(p.numerator, 32);
  const std::string fraction = std::to_string(p.numerator) + "/32";
  // Set fractions are copied out with or without the squeezed space.
  std::vector<std::string> ways = {std::to_string(p.whole) + " " + fraction, std::to_string(p.whole) + fraction, fraction,
                                   std::to_string(l.in_ticks())};
  for (const int places : {2, 3}) ways.push_back(decimal(l.in_inches(), places));
  for (const int places : {1, 2}) ways.push_back(decimal(l.in_mm() / 10, places) + " cm");
  ways.push_back(decimal(l.in_mm(), 0) + " mm");
  return ways;
}

const std::vector<std::string> kWords = {"Wilhelmina", "Quickenborne", "Ottoline", "Farthingale",    "Theophila", "Marchbanks",
                                         "73.91",      ": 7391",       "8.47",     "quayside-lodge", "/tmp",      kTop};

// A listing writes a set fraction as words that end a line; numbers are looked for as whole numbers, not inside others.
bool holds(const std::string& text, const std::string& wanted) {
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  for (std::size_t at = text.find(wanted); at != std::string::npos; at = text.find(wanted, at + 1)) {
    const bool before = at > 0 && digit(wanted.front()) && (digit(text[at - 1]) || text[at - 1] == '.');
    const std::size_t end = at + wanted.size();
    const bool after = end < text.size() && digit(wanted.back()) && digit(text[end]);
    if (!before && !after) return true;
  }
  return false;
}

// The words of a page listing without their places, one after another: a set fraction is several runs of one line.
std::string words_of_listing(const std::string& listing) {
  std::string words;
  std::istringstream lines(listing);
  for (std::string line; std::getline(lines, line); words += '\n')
    for (std::size_t at = line.find('"'); at != std::string::npos; at = line.find('"', at + 1)) {
      const std::size_t end = line.find('"', at + 1);
      if (end == std::string::npos) break;
      words += line.substr(at + 1, end - at - 1);
      at = end;
    }
  return words;
}

struct Shared {
  Made made;
  std::string text, objects;
};

Shared made_as(const std::string& set) {
  const fs::path folder = fs::path(GOWNSHEAF_BINARY_DIR) / "tests" / "quayside-lodge";
  fs::create_directories(folder);
  const std::string path = (folder / "project.yaml").string();
  std::ofstream(path, std::ios::binary | std::ios::trunc) << kProject;
  Order order;
  order.project_path = path;
  order.template_folder = kTop + "/packet-templates";
  order.font_root = "/usr/share/fonts";
  order.sheets = set;
  order.with_listing = true;
  Diagnostics diag;
  Shared shared;
  shared.made = make_packet(order, diag);
  INFO(shared.made.fault << shared.made.unavailable);
  for (const Diagnostic& d : diag.sorted()) INFO(d.code << ": " << d.sentence);
  REQUIRE(shared.made.readable);
  REQUIRE_FALSE(diag.has_errors());
  REQUIRE(shared.made.pages > 3);
  const gownsheaf::testing::ScratchFile file("group-searched.pdf", shared.made.pdf);
  shared.text = gownsheaf::testing::run("pdftotext -layout " + file.path() + " -").out +
                gownsheaf::testing::run("pdftotext -raw " + file.path() + " -").out +
                gownsheaf::testing::run("pdfinfo " + file.path()).out;
  shared.objects = gownsheaf::testing::plain_objects(shared.made.pdf);
  return shared;
}

// Which of the words and lengths stand in it.
std::vector<std::string> found_in(const std::string& text) {
  std::vector<std::string> found;
  for (const std::string& word : kWords)
    if (text.find(word) != std::string::npos) found.push_back(word);
  for (const PrivateLength& p : kLengths)
    for (const std::string& way : ways_to_write(p))
      if (holds(text, way)) found.push_back(way);
  return found;
}

std::string all_of(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) all += word + "\n";
  return all;
}

// Private figures of the file.
std::size_t private_keys(const std::string& json) {
  std::size_t n = 0;
  for (const char* key :
       {"\"key\": \"measures/", "\"key\": \"ease/", "\"key\": \"finished girths/", "\"key\": \"wearer/", "\"private\": true"})
    for (std::size_t at = json.find(key); at != std::string::npos; at = json.find(key, at + 1)) ++n;
  return n;
}

}  // namespace

TEST_CASE("group: none of what is private is found in pages, PDF, document facts or figures, workings included", "[group]") {
  const Shared group = made_as("group");
  CHECK(all_of(found_in(words_of_listing(group.made.listing))) == "");
  CHECK(all_of(found_in(group.text)) == "");
  CHECK(all_of(found_in(group.objects)) == "");
  CHECK(all_of(found_in(group.made.pdf)) == "");
  CHECK(all_of(found_in(group.made.figures_json)) == "");
  CHECK(private_keys(group.made.figures_json) == 0);
  CHECK(group.made.figures_json.find("\"line\"") == std::string::npos);
  // It still is a packet to sew from: workings, cut sizes, the day, the maker's own words.
  CHECK(group.text.find("How it was worked out") != std::string::npos);
  CHECK(group.made.figures_json.find("\"working\"") != std::string::npos);
  CHECK(group.made.figures_json.find("\"pieces/skirt breadth/blue linen/cut length\"") != std::string::npos);
  CHECK(group.text.find("Saturday 21 August 2027") != std::string::npos);
  CHECK(group.text.find("(not worked out)") == std::string::npos);
}

TEST_CASE("group: the same search finds the measures in the binder and its figures", "[group]") {
  const Shared binder = made_as("binder");
  CHECK(found_in(binder.made.figures_json).size() >= kLengths.size());
  CHECK(private_keys(binder.made.figures_json) >= 9);
  CHECK_FALSE(found_in(binder.text).empty());  // the longest of waist to floor, with its sum
  CHECK(holds(binder.text, "49 25/32"));
  CHECK_FALSE(found_in(words_of_listing(binder.made.listing)).empty());
}

TEST_CASE("group: the packet's mark cannot be used to try a guess at a measure", "[group]") {
  // Another waist in the file, nothing else: the shared packet is the same to the byte, so it holds nothing of the waist.
  const Shared group = made_as("group");
  const fs::path folder = fs::path(GOWNSHEAF_BINARY_DIR) / "tests" / "quayside-lodge-2";
  fs::create_directories(folder);
  std::string other = kProject;
  other.replace(other.find("31 13/32 in"), 11, "30 1/2 in");
  other.replace(other.find("Wilhelmina"), 10, "Anna");
  const std::string path = (folder / "other.yaml").string();
  std::ofstream(path, std::ios::binary | std::ios::trunc) << other;
  Order order;
  order.project_path = path;
  order.template_folder = kTop + "/packet-templates";
  order.font_root = "/usr/share/fonts";
  order.sheets = "group";
  order.with_listing = true;
  Diagnostics diag;
  const Made made = make_packet(order, diag);
  CHECK(made.pdf == group.made.pdf);
  CHECK(made.figures_json == group.made.figures_json);
}

TEST_CASE("group: what changed tells nothing of the body, neither in figures nor by a bar", "[group][since]") {
  const fs::path folder = fs::path(GOWNSHEAF_BINARY_DIR) / "tests" / "group-since";
  fs::create_directories(folder);
  const std::string old_path = (folder / "old.yaml").string(), new_path = (folder / "new.yaml").string();
  std::string other = kProject;
  other.replace(other.find("31 13/32 in"), 11, "30 1/2 in");
  std::ofstream(old_path, std::ios::binary | std::ios::trunc) << kProject;
  std::ofstream(new_path, std::ios::binary | std::ios::trunc) << other;
  const auto made = [&](const char* set) {
    Order order;
    order.project_path = new_path;
    order.since = old_path;
    order.template_folder = kTop + "/packet-templates";
    order.font_root = "/usr/share/fonts";
    order.sheets = set;
    order.with_listing = true;
    Diagnostics diag;
    return make_packet(order, diag);
  };
  const Made group = made("group"), binder = made("binder");
  CHECK(group.listing.find("Nothing changed.") != std::string::npos);
  CHECK(group.listing.find("\"changed\"") == std::string::npos);
  CHECK(binder.listing.find("Nothing changed.") == std::string::npos);
}

TEST_CASE("group: a sum is private when anything it rests on is, however far back", "[group]") {
  Figures figures;
  const auto add = [&](const char* key, std::vector<std::string> inputs, bool is_private = false) {
    Figure f;
    f.key = key;
    f.value = Length::inches(10);
    f.inputs = std::move(inputs);
    f.is_private = is_private;
    figures.add(std::move(f));
  };
  add("measures/waist", {}, true);
  add("rounds/waist/finished", {"measures/waist", "ease/waist"});
  add("pleats/sides/finished", {"rounds/waist/finished"});
  add("pleats/sides/visible", {"pleats/sides/finished", "pleats/sides/count"});
  add("cloths/wool/width", {});
  add("cloths/wool/cost", {"cloths/wool/price"});
  CHECK(sum_is_private(figures.at("rounds/waist/finished"), figures));
  CHECK(sum_is_private(figures.at("pleats/sides/visible"), figures));
  CHECK(sum_is_private(figures.at("cloths/wool/cost"), figures));
  CHECK_FALSE(sum_is_private(figures.at("cloths/wool/width"), figures));
}
