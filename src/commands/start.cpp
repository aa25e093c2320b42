#include <cstdio>

#include "commands/commands.h"
#include "files/files.h"

namespace gownsheaf {
namespace {

const char* const kHead = R"(# Fill in your own figures; every length needs its unit: 13 1/2 in, 34.5 cm, 2 yd.
# A line may be left out when you do not know it; write `to measure` when it is still to be taken.
#   gownsheaf check FILE.yaml     says what is wrong or doubtful
#   gownsheaf packet FILE.yaml    makes the packet
gownsheaf: 1
)";

const char* const kSkirtMeasures = R"(measures:                      # the body, over what will be worn under it
  waist: 28 in
  hip: 40 in
  waist to floor: 41 in        # in the shoes, over the petticoats
)";

const char* const kBodiceMeasures = R"(measures:                      # the body, over what will be worn under it
  bust: 36 in
  waist: 28 in
  back neck to waist: 15 1/2 in
)";

const char* const kDressMeasures = R"(measures:                      # the body, over what will be worn under it
  bust: 36 in
  waist: 28 in
  hip: 40 in
  back neck to waist: 15 1/2 in
  waist to floor: 41 in        # in the shoes, over the petticoats
)";

const char* const kCloths = R"(cloths:                        # each under its own name; `bought` is what lies on the shelf
  outer cloth: { kind: wool suiting, width: 58 in, bought: [6 yd] }
)";

const char* const kBodiceCloths = R"(cloths:                        # each under its own name; `bought` is what lies on the shelf
  outer cloth: { kind: wool suiting, width: 58 in, bought: [2 yd] }
  lining:      { kind: cotton sateen, width: 45 in, used as: lining, bought: [2 yd] }
)";

const char* const kDressCloths = R"(cloths:                        # each under its own name; `bought` is what lies on the shelf
  outer cloth: { kind: wool suiting, width: 58 in, bought: [7 yd] }
  lining:      { kind: cotton sateen, width: 45 in, used as: lining, bought: [2 yd] }
)";

const char* const kAllowances = R"(allowances: { seam: 5/8 in, hem: 3 in, top: 1/2 in }   # hem and top go to skirt pieces
pieces:                        # finished = stitch line to stitch line; a piece on the fold is given opened out
)";

const char* const kBodicePieces =
    R"(  - { piece: bodice front, part of: bodice, make: pair, from: [outer cloth, lining], finished width: 10 in, finished length: 17 in }
  - { piece: bodice back, part of: bodice, make: 1, on fold: yes, from: [outer cloth, lining], finished width: 16 in, finished length: 16 1/2 in }
  - { piece: sleeve, part of: sleeve, make: pair, from: [outer cloth, lining], finished width: 13 in, finished length: 22 in }
)";

const char* const kPetticoatCloths =
    R"(cloths:                        # each under its own name; `bought` is what lies on the shelf
  white cotton: { kind: cotton lawn, width: 45 in, bought: [5 yd] }
)";

const char* const kPetticoatPieces =
    R"(  - { piece: petticoat breadth, part of: petticoat, make: 3, from: [white cotton], cut width: full, finished length: 38 in }
  - { piece: waistband, part of: band, make: 1, from: [white cotton], finished width: 30 in, finished length: 1 in }
)";

const char* const kPetticoatPleats =
    R"(pleats:                        # give what you know of flat, finished, count, depth, visible; the rest is worked out
  - { run: petticoat top, of: [petticoat breadth], kind: knife, toward: centre back, finished: 28 in, count: 20 }
)";

const char* const kSkirtPieces =
    R"(  - { piece: skirt breadth, part of: skirt, make: 3, from: [outer cloth], cut width: full, finished length: 40 in }
)";

const char* const kBand =
    R"(  - { piece: waistband, part of: band, make: 1, from: [outer cloth], finished width: 30 in, finished length: 3 in }
)";

const char* const kPleats =
    R"(pleats:                        # give what you know of flat, finished, count, depth, visible; the rest is worked out
  - { run: skirt top, of: [skirt breadth], kind: knife, toward: centre back, finished: 28 in, count: 20 }
)";

const char* const kWork = R"(work: { hours a week: 6 }
)";

std::string project_for(const std::string& garment) {
  const std::string head = kHead;
  const std::string kind = "title: My " + garment + "\nworn on: 2027-06-19\ngarment: " + garment + "\n";
  const std::string skirt_rest = std::string(kPleats) + kWork;
  if (garment == "bodice") return head + kind + kBodiceMeasures + kBodiceCloths + kAllowances + kBodicePieces + kWork;
  if (garment == "dress") {
    return head + kind + kDressMeasures + kDressCloths + kAllowances + kBodicePieces + kSkirtPieces + skirt_rest;
  }
  if (garment == "petticoat") {
    return head + kind + kSkirtMeasures + kPetticoatCloths + kAllowances + kPetticoatPieces + kPetticoatPleats + kWork;
  }
  return head + kind + kSkirtMeasures + kCloths + kAllowances + kSkirtPieces + kBand + skirt_rest;
}

}  // namespace

int run_start(const Settings& settings) {
  if (exists(settings.output)) {
    say_fault(settings, settings.output + " is there already; nothing was written over. Choose another name.");
    return 2;
  }
  if (const auto fault = write_whole({{settings.output, project_for(settings.garment)}})) {
    say_fault(settings, fault->sentence);
    return 3;
  }
  std::printf("%s\n", settings.output.c_str());
  return 0;
}

}  // namespace gownsheaf
