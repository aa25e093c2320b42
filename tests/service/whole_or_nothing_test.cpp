// What hinders writing: each is told in a sentence, the old packet stays as it was, and nothing is left lying about.
#include <sys/mount.h>
#include <sys/stat.h>
#include <unistd.h>

#include "service_room.h"
#include "support/catch.h"

using namespace service_test;
namespace fs = std::filesystem;

namespace {

int temporaries(const House& house) {
  int n = 0;
  for (const auto& entry : fs::recursive_directory_iterator(house.folder / "out"))
    n += is_temporary_name(entry.path().filename().string()) ? 1 : 0;
  return n;
}

}  // namespace

TEST_CASE("temporary names are told from others", "[service]") {
  House house;
  house.folder.put("out/.gownsheaf-0123456789abcdef-77-0", "half");
  house.folder.put("out/deep/.gownsheaf-" + sha256("a.pdf").substr(0, 16) + "-1-12", "half");
  for (const char* other : {"out/.gownsheaf-notes", "out/.gownsheaf-0123456789abcdef-77", "out/.gownsheaf-0123456789abcdeX-7-0",
                            "out/gownsheaf-0123456789abcdef-77-0"})
    house.folder.put(other, "mine");
  CHECK(temporaries(house) == 2);
  CHECK(OutFolder(house.order.out).clear_temporaries(nullptr) == 2);
  CHECK(temporaries(house) == 0);
  CHECK(fs::exists(house.folder / "out/.gownsheaf-notes"));
  // Of another share's packets they are left: its run may be writing them.
  house.folder.put("out/.gownsheaf-" + sha256("a.pdf").substr(0, 16) + "-1-0", "half");
  house.folder.put("out/.gownsheaf-" + sha256("b.pdf").substr(0, 16) + "-1-0", "half");
  const std::vector<std::string> mine{"a"};
  CHECK(OutFolder(house.order.out).clear_temporaries(&mine) == 1);
  // Nor those of a project of the same name in another folder, which may be another share's.
  const std::string pdf = "/.gownsheaf-" + sha256("project.pdf").substr(0, 16) + "-1-0",
                    made = "/.gownsheaf-" + sha256("project.made").substr(0, 16) + "-1-0";
  for (const std::string folder : {"x", "y"}) {
    house.folder.put("out/" + folder + pdf, "half");
    house.folder.put("out/.gownsheaf/made/" + folder + made, "half");
  }
  const std::vector<std::string> one{"x/project"};
  CHECK(OutFolder(house.order.out).clear_temporaries(&one) == 2);
  CHECK(fs::exists(house.folder / ("out/y" + pdf)));
  CHECK(fs::exists(house.folder / ("out/.gownsheaf/made/y" + made)));
}

TEST_CASE("a folder in the packet's place, a name too long, a file for a folder: told, and the rest is made", "[service]") {
  House house;
  house.put("a.yaml", skirt("A"));
  house.put("b.yaml", skirt("B"));
  house.put(std::string(243, 'n') + ".yaml", skirt("N"));
  house.put(std::string(242, 'o') + ".yaml", skirt("O"));
  house.put("under/c.yaml", skirt("C"));
  fs::create_directories(house.folder / "out/a.pdf/kept");
  house.folder.put("out/under", "a file");
  const Heard heard = house.batch();
  REQUIRE(heard.results.size() == 5);
  CHECK_THAT(heard.results[0].problem,
             Catch::Matchers::EndsWith("/out/a.pdf` could not be written: it is a folder, not a file."));
  CHECK(heard.results[1].state == PacketState::made);
  CHECK_THAT(heard.results[2].problem, Catch::Matchers::StartsWith("Its name is too long: "));
  CHECK(heard.results[3].state == PacketState::made);
  CHECK_THAT(heard.results[4].problem,
             Catch::Matchers::EndsWith("could not be made: a part of the path is a file, not a folder."));
  CHECK(fs::exists(house.folder / "out/a.pdf/kept"));
  CHECK(house.get("under") == "a file");
  CHECK_FALSE(house.has("a.figures.json"));
  CHECK(temporaries(house) == 0);
}

TEST_CASE("a full disk leaves the old packet", "[service]") {
  House house;
  fs::create_directories(house.order.out);
  if (::mount("tmpfs", house.order.out.c_str(), "tmpfs", 0, "size=1m") != 0) {
    WARN("only root can make a small disk: not tried");
    return;
  }
  const struct Unmount {
    std::string at;
    ~Unmount() { ::umount(at.c_str()); }
  } unmount{house.order.out};
  house.put("a.yaml", skirt("A"));
  CHECK(house.batch().told() == "made a.yaml");
  const std::string old = house.get("a.pdf");
  const auto free_space = [&] { return fs::space(house.order.out).available; };
  house.folder.put("out/ballast", std::string(free_space() > 8192 ? free_space() - 8192 : 0, 'x'));
  house.put("a.yaml", skirt("Another"));
  const Heard heard = house.batch();
  CHECK_THAT(heard.results[0].problem, Catch::Matchers::EndsWith("could not be written: the disk is full."));
  CHECK((house.get("a.pdf") == old));
  CHECK(temporaries(house) == 0);
  fs::remove(house.folder / "out/ballast");
  CHECK(house.batch().told() == "made a.yaml");
  CHECK((house.get("a.pdf") != old));
  ::mount("tmpfs", house.order.out.c_str(), "tmpfs", MS_REMOUNT | MS_RDONLY, "size=1m");
  std::string why;
  CHECK(house.room(&why) == nullptr);
  CHECK_THAT(why, Catch::Matchers::EndsWith("/lock` could not be written: the disk can only be read."));
}

TEST_CASE("no permission for the folder of packets is told", "[service]") {
  if (::geteuid() == 0) return;  // root may everything
  House house;
  house.put("a.yaml", skirt("A"));
  fs::create_directories(house.order.out);
  ::chmod(house.order.out.c_str(), 0555);
  std::string why;
  CHECK(house.room(&why) == nullptr);
  CHECK_THAT(why, Catch::Matchers::EndsWith("could not be made: you have no permission for it."));
  ::chmod(house.order.out.c_str(), 0755);
}

TEST_CASE("a folder of projects that cannot be read is told, and nothing in it is called gone", "[service]") {
  House house;
  house.put("a.yaml", skirt("A"));
  house.put("shut/b.yaml", skirt("B"));
  house.order.problem_files = true;
  fs::create_directories(house.order.out);
  const bool root = ::geteuid() == 0;  // root may everything: for this test it is somebody else
  for (const std::string& path : {house.folder / "", house.order.out}) ::chmod(path.c_str(), 0777);
  ::chmod((house.folder / "in/shut").c_str(), 0);
  if (root && ::seteuid(65534) != 0) return;
  Heard heard;
  const auto room = house.room();
  const BatchOutcome outcome = room ? run_batch(*room, {}, heard) : BatchOutcome{};
  if (root) CHECK(::seteuid(0) == 0);
  ::chmod((house.folder / "in/shut").c_str(), 0755);
  CHECK(outcome.unread);
  CHECK(heard.told() == "made a.yaml");
  REQUIRE(heard.said.size() == 1);
  CHECK_THAT(heard.said[0], Catch::Matchers::EndsWith("in/shut` could not be read: you have no permission for it."));
}
