// Files of strangers among good ones: the good ones are made, each of the others is told, and nothing takes more than its share.
// GOWNSHEAF_HOSTILE=200 for the long run (tests/slow/hostile.sh).
#include <sys/resource.h>

#include <cstdlib>

#include "hostile.h"
#include "service_room.h"
#include "support/catch.h"

using namespace service_test;

TEST_CASE("of strangers' projects every one is refused and the good ones among them are made", "[service][hostile]") {
  const char* asked = std::getenv("GOWNSHEAF_HOSTILE");
  const int n = asked != nullptr ? std::atoi(asked) : static_cast<int>(hostile::makers().size()),
            good = asked != nullptr ? 20 : 2;
  House house;
  house.order.ceilings = {30, 512};
  hostile::fill(house.folder / "in", n);
  house.folder.put("in/secret.svg", "<svg xmlns='http://www.w3.org/2000/svg'>" + hostile::kFront + "</svg>");
  for (int i = 0; i < good; ++i)
    house.put("s" + std::to_string(1000 + i * 10) + "/good.yaml", skirt("Good " + std::to_string(i)));
  const Heard heard = house.batch();
  int made = 0, failed = 0;
  for (const PacketResult& r : heard.results) {
    const bool is_good = r.project.path.ends_with("/good.yaml");
    CAPTURE(r.project.path, r.problem, r.messages.substr(0, 400));
    CHECK(r.state == (is_good ? PacketState::made : PacketState::failed));
    CHECK(r.problem.find("fault of the program") == std::string::npos);
    CHECK(r.problem.find("no answer") == std::string::npos);
    ++(r.state == PacketState::made ? made : failed);
  }
  CHECK(made == good);
  CHECK(failed == n);
  CHECK(heard.said.empty());
  struct rusage used {};
  ::getrusage(RUSAGE_CHILDREN, &used);
  std::printf("%d refused, %d made; the largest worker took %ld MiB\n", failed, made, used.ru_maxrss / 1024);
#ifndef GOWNSHEAF_SANITIZED
  CHECK(used.ru_maxrss / 1024 < 256);
#endif
}

TEST_CASE("a project that would search for ever is told, and its neighbour is made", "[service][hostile]") {
  House house;
  house.order.ceilings = {1, 512};
  house.order.packet.work.outline_work = std::int64_t{1} << 50;
  house.put("pieces.svg",
            "<svg xmlns='http://www.w3.org/2000/svg' width='400mm' height='400mm' viewBox='0 0 400 400'>"
            "<path id='front' d='M10 10H310L250 350L60 300Z'/></svg>");
  house.put(
      "ever.yaml",
      "gownsheaf: 1\ntitle: Drawn\ncloths: { linen: { kind: dress linen, width: 70 cm, bought: [3 m] } }\n"
      "pieces: [{ piece: front, part of: bodice, make: 9, from: [linen], outline: pieces.svg#front, outline is: cut line }]\n");
  house.put("good.yaml", skirt("Good"));
  CHECK(house.batch().told() ==
        "failed ever.yaml: It took longer than 1 second, the most that one project may take.|made good.yaml");
}

TEST_CASE("fills a folder for tests/slow/hostile.sh", "[.][fill]") {
  const char* folder = std::getenv("GOWNSHEAF_FILL");
  REQUIRE(folder != nullptr);
  const ScratchFolder scratch;
  hostile::fill(folder, 200);
  std::ofstream(std::string(folder) + "/secret.svg") << "<svg xmlns='http://www.w3.org/2000/svg'>" + hostile::kFront + "</svg>";
  for (int i = 0; i < 20; ++i)
    std::ofstream(std::string(folder) + "/s" + std::to_string(1000 + i * 10) + "/good.yaml")
        << skirt("Good " + std::to_string(i));
}
