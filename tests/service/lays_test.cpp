// Lays that are kept: the packet is the same to the byte with and without, and a pack that was cut off or changed is not used.
#include "service/lay_pack.h"
#include "service_room.h"
#include "support/catch.h"

using namespace service_test;

TEST_CASE("a packet made from kept lays is the same packet", "[service][lays]") {
  House house;
  Diagnostics diag;
  std::vector<SourceText> sources;
  std::string fault;
  Order order = house.order.packet;
  order.work.lay_work = 100;
  order.work.outline_work = 10'000;
  const auto shared = load_shared(order.template_folder, order.font_root, diag, sources, fault);
  REQUIRE(shared);
  order.shared = &*shared;
  house.put("pieces.svg",
            "<svg xmlns='http://www.w3.org/2000/svg' width='400mm' height='400mm' viewBox='0 0 400 400'>"
            "<path id='front' d='M10 10H310L250 350L60 300Z'/></svg>");
  house.put(
      "drawn.yaml",
      "gownsheaf: 1\ntitle: Drawn\ncloths: { linen: { kind: dress linen, width: 70 cm, bought: [1 m] } }\n"
      "pieces: [{ piece: front, part of: bodice, make: 3, from: [linen], outline: pieces.svg#front, outline is: cut line }]\n");
  for (const auto& project : std::vector<std::string>{house.order.in + "/drawn.yaml",
                                                      std::string(GOWNSHEAF_SOURCE_DIR) + "/examples/linen-skirt/project.yaml"}) {
    CAPTURE(project);
    order.project_path = project;
    const auto made = [&](LayPack* pack) {
      order.work.store = pack;
      Diagnostics found;
      return make_packet(order, found);
    };
    LayPack first(""), none("");
    const Made with = made(&first), without = made(nullptr);
    REQUIRE(with.pdf.size() > 1000);
    CHECK(with.pdf == without.pdf);
    CHECK(first.changed());
    const std::string text = first.text();
    LayPack again(text);
    const Made later = made(&again);
    CHECK(later.pdf == without.pdf);
    CHECK(later.figures_json == without.figures_json);
    CHECK(again.found() > 0);
    CHECK_FALSE(again.changed());
    CHECK(again.text() == text);
    CHECK(LayPack(text).changed());  // it holds what nobody has asked for yet
    std::string one_digit = text;
    one_digit[text.find("\t", 20) + 1] ^= 1;
    for (const std::string& damaged : {text.substr(0, text.size() / 2), text.substr(0, text.size() - 1), text + "x", "x" + text,
                                       one_digit, std::string("gownsheaf lays\t1\n")})
      CHECK_FALSE(LayPack(damaged).changed());  // nothing of it is used
  }
}

TEST_CASE("a batch keeps lays from one making to the next, and leaves them out when asked to", "[service][lays]") {
  House house;
  house.put("a.yaml", skirt("A"));
  house.batch();
  const std::string lays = house.get(".gownsheaf/lays/a.lays");
  CHECK_THAT(lays, Catch::Matchers::StartsWith("gownsheaf lays\t1\n"));
  house.order.packet.paper = "a4";  // all is made anew, no lay is another
  CHECK(house.batch().told() == "made a.yaml");
  CHECK(house.get(".gownsheaf/lays/a.lays") == lays);
  const std::string pdf = house.get("a.pdf");
  House other;
  other.order = house.order;
  other.order.in = house.order.in;
  other.order.out = other.folder / "out";
  other.order.keep_lays = false;
  CHECK(other.batch().told() == "made a.yaml");
  CHECK_FALSE(other.has(".gownsheaf/lays"));
  CHECK((other.get("a.pdf") == pdf));
}
