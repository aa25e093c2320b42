#include <sys/stat.h>
#include <unistd.h>

#include "service_room.h"
#include "support/catch.h"

using namespace service_test;
namespace fs = std::filesystem;

TEST_CASE("what tells a project from a note", "[service]") {
  CHECK(is_project("project.yaml", "anything"));
  CHECK(is_project("dress.yaml", "# a remark\ntitle: x\ngownsheaf: 1\n"));
  CHECK(is_project("dress.yaml", "\xEF\xBB\xBFgownsheaf : 1\r\n"));
  CHECK(is_project("dress.yaml", "{gownsheaf: 1, title: x}"));
  CHECK(is_project("dress.yaml", "\"gownsheaf\": 1"));
  CHECK_FALSE(is_project("notes.yaml", "title: what gownsheaf: 1 said\n  gownsheaf: 1\ngownsheaf 1\n"));
  CHECK_FALSE(is_project("notes.yaml", ""));
  CHECK(is_yaml_name("a.yml"));
  CHECK_FALSE(is_yaml_name("a.yaml~"));
}

TEST_CASE("records are read back as they were written, and damaged ones not at all", "[service]") {
  PacketRecord r{"a/b.yaml",
                 "f00",
                 {"x\ty.svg", "n\\1\n.svg"},
                 {{"b.figures.json", "11"}, {"b.pdf", "22"}},
                 12,
                 {"T\xC3\xA4tle", "E. R.", {{"wool", "5 1/4 yd"}}, 2, 1, false}};
  const std::string text = text_of(r);
  const auto again = record_of(text);
  REQUIRE(again);
  CHECK(text_of(*again) == text);
  CHECK(again->drawings == r.drawings);
  for (std::size_t cut = 0; cut < text.size(); ++cut) CHECK_FALSE(record_of(text.substr(0, cut)));
  for (std::size_t at = 0; at < text.size(); ++at) {  // a digit of the cloth to buy, which no other hash holds
    std::string changed = text;
    changed[at] = changed[at] == '5' ? '6' : '5';
    if (changed != text) CHECK_FALSE(record_of(changed));
  }
  CHECK_FALSE(record_of("gownsheaf made\t1\nend\n"));
  CHECK_FALSE(record_of(""));
}

TEST_CASE("a batch makes what is new or changed, leaves what is current, and mirrors the folders", "[service]") {
  House house;
  house.put("one.yaml", skirt("One"));
  house.put("deep/er/project.yaml", skirt("Two"));
  house.put("notes.yaml", "title: buttons to look at\n");
  house.put(".swap.yaml", skirt("Swap"));
  house.put("broken.yml", skirt("Broken") + "sleevs: 3\n");
  CHECK(house.batch().told() == "failed broken.yml: It has 1 error.|made deep/er/project.yaml|made one.yaml");
  for (const char* name : {"one.pdf", "one.figures.json", "deep/er/project.pdf", "batch.json"}) CHECK(house.has(name));
  CHECK_FALSE(house.has("broken.pdf"));
  CHECK(house.get("batch.json").find("\"made\": 2,\n  \"current\": 0,\n  \"failed\": 1") != std::string::npos);
  const std::string first = house.get("one.pdf");
  CHECK(house.batch().told() == "failed broken.yml: It has 1 error.|current deep/er/project.yaml|current one.yaml");

  {  // a project changes
    house.put("one.yaml", skirt("Another"));
    CHECK(house.batch().results.back().state == PacketState::made);
    CHECK((house.get("one.pdf") != first));
    house.put("one.yaml", skirt("One"));
    house.batch();
    CHECK((house.get("one.pdf") == first));  // the very same bytes
  }
  {  // an output was damaged, or is gone
    house.folder.put("out/one.figures.json", "{}");
    fs::remove(house.folder / "out/deep/er/project.pdf");
    CHECK(house.batch().told() == "failed broken.yml: It has 1 error.|made deep/er/project.yaml|made one.yaml");
  }
  {  // an option changes
    house.order.packet.paper = "a4";
    CHECK(house.batch().told() == "failed broken.yml: It has 1 error.|made deep/er/project.yaml|made one.yaml");
  }
  {  // a project that breaks keeps its old packet
    const std::string before = house.get("one.pdf");
    house.put("one.yaml", skirt("One") + "title: again\n");
    const Heard heard = house.batch();
    CHECK(heard.results.back().state == PacketState::failed);
    CHECK(heard.results.back().record.has_value());
    CHECK((house.get("one.pdf") == before));
  }
  {  // a project goes: its outputs are listed, then removed, and nothing else
    house.folder.put("out/one.txt", "mine");
    fs::remove(house.folder / "in/one.yaml");
    fs::remove(house.folder / "in/deep/er/project.yaml");
    house.folder.put("out/deep/er/project.figures.json", "edited");
    const auto room = house.room();
    const FoundProjects found = find_projects(room->search());
    CHECK(prune(*room, found, false).files == std::vector<std::string>{"deep/er/project.pdf", "one.figures.json", "one.pdf"});
    CHECK(house.has("one.pdf"));
    const Pruned pruned = prune(*room, found, true);
    CHECK(pruned.kept == std::vector<std::string>{"deep/er/project.figures.json"});
    CHECK_FALSE(house.has("one.pdf"));
    CHECK_FALSE(house.has("deep/er/project.pdf"));
    CHECK(house.has("one.txt"));
    CHECK(house.has("deep/er/project.figures.json"));
    CHECK(prune(*room, found, true).files.empty());
  }
}

TEST_CASE("a drawing is part of what a packet is made of", "[service]") {
  House house;
  house.put("d/pieces.svg", kDrawing);
  house.put("d/project.yaml", drawn("pieces.svg"));
  Heard first = house.batch();
  REQUIRE(first.told() + (first.results.empty() ? "" : first.results[0].messages) == "made d/project.yaml");
  CHECK(first.results[0].record->drawings == std::vector<std::string>{"pieces.svg"});
  CHECK(house.batch().told() == "current d/project.yaml");
  house.put("d/pieces.svg", kDrawing + "\n");
  CHECK(house.batch().told() == "made d/project.yaml");
  fs::remove(house.folder / "in/d/pieces.svg");
  CHECK(house.batch().results[0].state == PacketState::failed);
}

TEST_CASE("every share of the work is made once, and shares stay the same", "[service]") {
  House house;
  for (int i = 0; i < 12; ++i) house.put("p" + std::to_string(i) + ".yaml", "gownsheaf: 1\n");
  std::multimap<std::string, int> taken;
  house.order.shards = 3;
  for (int k = 1; k <= 3; ++k) {
    house.order.shard = k;
    for (const PacketResult& r : house.batch().results) taken.emplace(r.project.path, k);
    CHECK(house.has("batch." + std::to_string(k) + "-of-3.json"));
  }
  CHECK(taken.size() == 12);
  for (int i = 0; i < 12; ++i) CHECK(taken.count("p" + std::to_string(i) + ".yaml") == 1);
}

TEST_CASE("shares of another number do not work in the folder at once", "[service]") {
  House house;
  std::string why;
  const auto share = [&](int k, int n) {
    house.order.shard = k;
    house.order.shards = n;
    return house.room(&why);
  };
  {
    const auto one = share(1, 3), two = share(2, 3);
    REQUIRE(one);
    REQUIRE(two);
    CHECK(share(2, 3) == nullptr);  // this very share
    CHECK_THAT(why, Catch::Matchers::StartsWith("Another batch or watch is at work in"));
    CHECK(share(2, 30) == nullptr);
    CHECK_THAT(why, Catch::Matchers::StartsWith("Shares of another number than 30 are at work in"));
    CHECK(share(0, 0) == nullptr);
  }
  CHECK(share(2, 30) != nullptr);
  const auto all = share(0, 0);
  REQUIRE(all);
  CHECK(share(1, 3) == nullptr);
  CHECK_THAT(why, Catch::Matchers::StartsWith("Another batch or watch is at work in"));
}

TEST_CASE("a project that was stopped is left alone until it, a drawing or a limit has changed", "[service]") {
  House house;
  house.put("pieces.svg", kDrawing);
  const std::string project = drawn("./pieces.svg");
  house.put("a.yaml", project);
  const auto tell = house.order.tell;
  const auto falls = [](const auto&, const auto&, bool) -> std::string { std::abort(); };
  const std::string fell = "failed a.yaml: The program fell over it (signal 6). That is a fault of the program.";
  const std::string kept = fell + " It is not tried again until it, the program or a limit has changed.";
  house.order.tell = falls;
  CHECK(house.batch().told() == fell);
  house.order.tell = tell;  // it would be made now
  CHECK(house.batch().told() == kept);
  house.put("pieces.svg", kDrawing + "\n");
  CHECK(house.batch().told() == "made a.yaml");
  CHECK_FALSE(house.has(".gownsheaf/stopped/a.stopped"));

  house.put("a.yaml", project + "# another\n");
  house.order.tell = falls;
  CHECK(house.batch().told() == fell);
  house.order.tell = tell;
  house.order.ceilings.seconds += 1;
  CHECK(house.batch().told() == "made a.yaml");

  const StoppedRecord r{"a\tb", "f0", "3 s", {"x\ny", "z"}, "Why."};
  const std::string text = text_of(r);
  for (std::size_t cut = 0; cut < text.size(); ++cut) CHECK_FALSE(stopped_record_of(text.substr(0, cut)));
  REQUIRE(stopped_record_of(text));
  CHECK(text_of(*stopped_record_of(text)) == text);
}

TEST_CASE("pruning takes away the folders that the program made, and no others", "[service]") {
  House house;
  house.put("autumn/early/a.yaml", skirt("A"));
  house.put("autumn/b.yaml", "gownsheaf: 1\ntitle: B\nsleevs: 3\n");
  house.put("spring/c.yaml", skirt("C"));
  house.put("winter/d.yaml", skirt("D"));
  house.put("stays.yaml", skirt("E"));
  house.order.problem_files = true;
  fs::create_directories(house.folder / "out/spring");  // somebody's own
  house.batch();
  house.folder.put("out/winter/note.txt", "mine");
  for (const char* folder : {"autumn", "spring", "winter"})
    fs::rename(house.folder / (std::string("in/") + folder), house.folder / (std::string("moved-") + folder));
  {
    const auto room = house.room();
    const FoundProjects found = find_projects(room->search());
    const std::vector<std::string> gone{"autumn/early/a.figures.json",
                                        "autumn/early/a.pdf",
                                        "spring/c.figures.json",
                                        "spring/c.pdf",
                                        "winter/d.figures.json",
                                        "winter/d.pdf",
                                        "autumn/b.problems.txt",
                                        "autumn/early/",
                                        "autumn/"};
    CHECK(prune(*room, found, false).files == gone);
    CHECK(prune(*room, found, true).files == gone);
  }
  CHECK_FALSE(house.has("autumn"));
  CHECK(house.has("spring"));
  CHECK(house.has("winter/note.txt"));
  for (const char* kept : {"made", "lays", "folders"}) CHECK_FALSE(house.has(".gownsheaf/" + std::string(kept) + "/autumn"));
  fs::remove(house.folder / "out/winter/note.txt");
  const auto room = house.room();
  CHECK(prune(*room, find_projects(room->search()), true).files == std::vector<std::string>{"winter/"});
  CHECK(house.has("stays.pdf"));
}

TEST_CASE("what is told of a failed project's older packet is there", "[service]") {
  House house;
  house.put("a.yaml", skirt("A"));
  house.batch();
  house.put("a.yaml", "gownsheaf: 1\nsleevs: 3\n");
  CHECK(house.batch().results[0].record);
  CHECK(house.get("batch.json").find("a.pdf") != std::string::npos);
  fs::remove(house.folder / "out/a.pdf");
  CHECK_FALSE(house.batch().results[0].record);
  CHECK(house.get("batch.json").find("a.pdf") == std::string::npos);
}

TEST_CASE("two runs do not share a folder, and packets do not go among the projects", "[service]") {
  House house;
  const auto first = house.room();
  REQUIRE(first);
  std::string why;
  CHECK(house.room(&why) == nullptr);
  CHECK_THAT(why, Catch::Matchers::StartsWith("Another batch or watch is at work in"));
  House other;
  other.order.out = other.order.in;
  CHECK(other.room(&why) == nullptr);
  CHECK_THAT(why, Catch::Matchers::StartsWith("Packets may not go to"));
  CHECK(fs::is_empty(other.order.in));  // nothing is left there
  other.order.out = "";
  CHECK(other.room(&why) == nullptr);
  CHECK(why == "No folder was named for the packets.");
  other.order.out = other.order.in + "/packets";  // below is well
  CHECK(other.room(&why) != nullptr);
}

TEST_CASE("projects that would make one packet, or the list, are told", "[service]") {
  House house;
  house.put("a.yaml", skirt("A"));
  house.put("a.yml", skirt("B"));
  house.put("index.yaml", skirt("C"));
  CHECK(house.batch().told() ==
        "made a.yaml|failed a.yml: Its packet would be that of `a.yaml`; give one of them another name.|"
        "failed index.yaml: Its packet would be `index.pdf`, which is the list of packets; give it another name.");
}

TEST_CASE("the second of two that would make one packet has neither the other's packet nor its file of problems", "[service]") {
  House house;
  house.order.problem_files = true;
  house.put("a.yaml", "gownsheaf: 1\n");  // it has errors of its own
  house.put("a.yml", skirt("B"));
  house.batch();
  CHECK_THAT(house.get("a.problems.txt"), Catch::Matchers::Contains("a.yaml: It has "));
  CHECK_THAT(house.get("a.yml.problems.txt"), Catch::Matchers::Contains("Its packet would be that of `a.yaml`"));
  house.put("a.yaml", skirt("A"));
  const Heard heard = house.batch();
  CHECK_FALSE(house.has("a.problems.txt"));
  CHECK(house.has("a.yml.problems.txt"));
  REQUIRE(heard.results.size() == 2);
  CHECK(heard.results[0].record);
  CHECK_FALSE(heard.results[1].record);
}

TEST_CASE("a folder with the name of a file that is written does not stand in a neighbour's way", "[service]") {
  House house;
  house.put("a.yaml", skirt("A"));
  for (const char* folder : {"a.pdf", "a.made", "a.lays", "a.figures.json", "in/a.work.ics", "batch.json", "index.pdf"})
    house.put(std::string(folder) + "/x.yaml", skirt("X"));
  house.put("index.of/b.yaml", skirt("B"));
  house.put("in/batch.json/c.yaml", skirt("C"));  // the list lies at the top
  const Heard heard = house.batch();
  CHECK(house.has("a.pdf"));
  CHECK(house.has("batch.json"));
  CHECK(house.has("index.of/b.pdf"));
  CHECK(house.has("in/batch.json/c.pdf"));
  std::size_t refused = 0;
  for (const PacketResult& r : heard.results) refused += r.problem.starts_with("Its folder `") ? 1 : 0;
  CHECK(refused == 7);
}

TEST_CASE("a file of problems goes with its project, also when nobody watched", "[service]") {
  House house;
  house.order.problem_files = true;
  house.put("bad.yaml", "gownsheaf: 1\n");
  house.put("worse.yaml", "gownsheaf: 1\n");
  house.batch();
  CHECK(house.has("bad.problems.txt"));
  house.folder.put("out/mine.problems.txt", "somebody's own\n");
  std::filesystem::remove(house.folder / "in/bad.yaml");
  {
    const auto room = house.room();
    const FoundProjects found = find_projects(room->search());
    CHECK(prune(*room, found, false).files == std::vector<std::string>{"bad.problems.txt"});
    FoundProjects unsure = found;
    unsure.faults.push_back("a folder could not be read");
    CHECK(prune(*room, unsure, false).files.empty());
    CHECK(house.has("bad.problems.txt"));
  }
  house.batch();
  CHECK_FALSE(house.has("bad.problems.txt"));
  CHECK(house.has("worse.problems.txt"));
  CHECK(house.has("mine.problems.txt"));
}

TEST_CASE("a project with errors fails alike until something that it reads has changed", "[service]") {
  House house;
  house.put("a.yaml", skirt("A", "accept: [{ code: drawn }]\n") + "pieces: []\n");
  house.put("b.yaml",
            "gownsheaf: 1\ntitle: B\ncloths: { linen: { kind: dress linen, width: 140 cm, bought: [3 m] } }\n"
            "pieces: [{ piece: front, part of: bodice, make: 1, from: [linen], outline: b.svg#front }]\n");
  const Heard heard = house.batch();
  REQUIRE(heard.results.size() == 2);
  const auto room = house.room();
  for (const PacketResult& r : heard.results) {
    INFO(r.project.path);
    CHECK(r.state == PacketState::failed);
    CHECK(room->fails_still(r.project, r));
  }
  CHECK(heard.results[1].drawings == std::vector<std::string>{"b.svg"});
  house.put("b.svg", "<svg/>");  // it could not be read before
  house.put("a.yaml", skirt("A"));
  for (const PacketResult& r : heard.results) CHECK_FALSE(room->fails_still(r.project, r));
}
