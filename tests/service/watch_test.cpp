// The service as a process of its own: what arrives is made, what breaks is told beside, what is mended is no longer told, and a stop
// is clean. Waits look again every hundredth of a second and give up after twenty seconds.
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <functional>

#include "service/settling.h"
#include "service/watch.h"
#include "service_room.h"
#include "support/catch.h"

using namespace service_test;
namespace fs = std::filesystem;

namespace {

struct Watched {
  House house;
  pid_t pid = -1;
  Watched() {
    house.order.problem_files = true;
    house.order.jobs = 1;
  }
  ~Watched() {
    if (pid > 0) stop(SIGKILL);
  }
  void begin(int scan_every = 0) {
    pid = fork();
    if (pid != 0) return;
    Heard heard;
    const auto room = house.room();
    if (room != nullptr) run_watch(*room, {20, scan_every, 100, house.folder / "health"}, {}, heard);
    _exit(room != nullptr && heard.said.empty() ? 0 : 1);
  }
  int stop(int signal) {
    kill(pid, signal);
    int status = 0;
    waitpid(pid, &status, 0);
    pid = -1;
    return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
  }
  // by rename, as a careful program saves
  void arrive(const std::string& name, const std::string& bytes) const {
    house.folder.put("new", bytes);
    fs::create_directories(fs::path(house.folder / ("in/" + name)).parent_path());
    fs::rename(house.folder / "new", house.folder / ("in/" + name));
  }
};

bool soon(const std::function<bool()>& true_now) {
  for (int i = 0; i < 2000; ++i) {
    if (true_now()) return true;
    usleep(10'000);
  }
  return false;
}

std::string pdf_title(const std::string& bytes) {
  return bytes.find("/Title") == std::string::npos ? "" : bytes.substr(bytes.find("/Title"), 80);
}

}  // namespace

TEST_CASE("files settle: two ticks when closed, twenty while open, two hundred at most", "[service]") {
  Settling s;
  const auto ticks = [&](int most) {
    for (int n = 1; n <= most; ++n)
      if (!s.tick().empty()) return n;
    return 0;
  };
  s.whole("a");
  CHECK(ticks(10) == 2);
  s.touched("a");
  CHECK(ticks(30) == 20);
  s.touched("a");
  s.tick();
  s.whole("a");  // closed now
  CHECK(ticks(10) == 2);
  int taken = 0;
  for (int n = 1; n <= 300 && taken == 0; ++n) {  // somebody who never stops writing
    s.touched("a");
    if (!s.tick().empty()) taken = n;
  }
  CHECK(taken == 200);
  CHECK(s.empty());
}

TEST_CASE("what arrives in a watched folder is made, and what is wrong is told beside it", "[service][watch]") {
  Watched w;
  w.arrive("before.yaml", skirt("Before"));
  w.begin();
  CHECK(soon([&] { return w.house.has("before.pdf"); }));
  w.arrive("deep/er/a.yaml", skirt("A"));                   // folders that are new too
  w.house.put("slow.yaml", "gownsheaf: 1\ntitel: Slow\n");  // written in place, and wrong
  CHECK(soon([&] { return w.house.has("deep/er/a.pdf"); }));
  CHECK(soon([&] { return w.house.has("slow.problems.txt"); }));
  CHECK_THAT(w.house.get("slow.problems.txt"),
             Catch::Matchers::StartsWith("Gownsheaf could not make this packet.\nslow.yaml: It has "));
  CHECK(w.house.get("slow.problems.txt").find("slow.yaml:2:1: error [unknown-key]") != std::string::npos);
  w.arrive("slow.yaml", skirt("Slow"));
  CHECK(soon([&] { return w.house.has("slow.pdf") && !w.house.has("slow.problems.txt"); }));

  const std::string before = w.house.get("before.pdf");
  w.arrive(".before.yaml.swp", "gownsheaf: 1\n");  // an editor's
  w.arrive("before.yaml", skirt("After"));
  CHECK(soon([&] { return pdf_title(w.house.get("before.pdf")) != pdf_title(before); }));

  // A folder that is moved: its packets are made in the new place; a project that goes keeps its packet.
  fs::rename(w.house.folder / "in/deep", w.house.folder / "in/flat");
  CHECK(soon([&] { return w.house.has("flat/er/a.pdf"); }));
  CHECK(w.house.has("deep/er/a.pdf"));
  w.house.put("bad.yaml", "gownsheaf: 1\n");
  CHECK(soon([&] { return w.house.has("bad.problems.txt"); }));
  fs::remove(w.house.folder / "in/bad.yaml");
  CHECK(soon([&] { return !w.house.has("bad.problems.txt"); }));

  // What could not be written is tried again, though the project does not change.
  w.house.folder.put("out/flow", "a file in a folder's place");
  w.arrive("flow/a.yaml", "gownsheaf: 1\n");  // refused: no retry would mend it
  w.arrive("flow/b.yaml", skirt("B"));
  CHECK(soon([&] { return w.house.folder.get("health").find("\"failed\":2") != std::string::npos; }));
  fs::remove(w.house.folder / "out/flow");
  CHECK(soon([&] { return w.house.has("flow/b.pdf"); }));
  fs::remove_all(w.house.folder / "in/flow");

  CHECK(soon([&] { return w.house.folder.get("health").find("\"projects\":3,\"failed\":0") != std::string::npos; }));
  CHECK(w.stop(SIGTERM) == 1);  // it said that the file of problems could not be written either
  CHECK(w.house.folder.get("health") == "{\"state\":\"stopped\",\"projects\":3,\"failed\":0,\"waiting\":0}\n");
  CHECK(w.house.room() != nullptr);  // the lock is let go
}

TEST_CASE("what is still being written is waited for, and lost news leads to a look at everything", "[service][watch]") {
  Watched w;
  w.begin();
  CHECK(soon([&] { return fs::exists(w.house.folder / "health"); }));
  {
    std::ofstream slow(w.house.folder / "in/slow.yaml");
    slow << "gownsheaf: 1\n" << std::flush;  // no project yet: it would be told
    usleep(120'000);                         // six times what a closed file is given
    CHECK_FALSE(w.house.has("slow.problems.txt"));
    slow << "title: Slow\n";
  }
  CHECK(soon([&] { return w.house.has("slow.pdf"); }));

  // While it sleeps more happens than the system keeps for it; the project comes last, and its news is lost.
  std::ifstream most_kept("/proc/sys/fs/inotify/max_queued_events");
  int most = 0;
  REQUIRE((most_kept >> most));
  if (most > 100'000) return;
  kill(w.pid, SIGSTOP);
  for (int i = 0; i < most + 10; ++i) std::ofstream(w.house.folder / (i % 2 == 0 ? "in/a.txt" : "in/b.txt"));
  w.arrive("lost.yaml", skirt("Lost"));
  kill(w.pid, SIGCONT);
  CHECK(soon([&] { return w.house.has("lost.pdf"); }));
  CHECK(w.stop(SIGTERM) == 0);
}

TEST_CASE("a watched folder may go and come back, and a burst is all made", "[service][watch]") {
  Watched w;
  w.begin();
  CHECK(soon([&] { return fs::exists(w.house.folder / "health"); }));
  fs::rename(w.house.folder / "in", w.house.folder / "away");
  CHECK(soon([&] { return w.house.folder.get("health").find("folder gone") != std::string::npos; }));
  w.house.folder.put("away/later.yaml", skirt("Later"));
  fs::rename(w.house.folder / "away", w.house.folder / "in");
  CHECK(soon([&] { return w.house.has("later.pdf"); }));
  for (int i = 0; i < 12; ++i) w.arrive("b" + std::to_string(i) + ".yaml", "gownsheaf: 1\n");
  CHECK(soon([&] {
    int n = 0;
    for (int i = 0; i < 12; ++i) n += w.house.has("b" + std::to_string(i) + ".problems.txt") ? 1 : 0;
    return n == 12;
  }));
  CHECK(w.stop(SIGINT) == 1);  // it said that the folder was gone
}

TEST_CASE("of two that would make one packet the second is made when the first goes", "[service][watch]") {
  Watched w;
  w.arrive("a.yaml", skirt("A"));
  w.arrive("a.yml", skirt("B"));
  w.arrive("gone.yaml", "gownsheaf: 1\n");
  w.house.batch();
  CHECK(w.house.has("gone.problems.txt"));
  fs::remove(w.house.folder / "in/gone.yaml");  // while nobody watches
  w.begin();
  CHECK(soon([&] { return w.house.has("a.yml.problems.txt") && w.house.has("a.pdf") && !w.house.has("gone.problems.txt"); }));
  const std::string first = w.house.get("a.pdf");
  fs::remove(w.house.folder / "in/a.yaml");
  CHECK(soon([&] { return w.house.get("a.pdf") != first && !w.house.has("a.yml.problems.txt"); }));
  CHECK(w.stop(SIGTERM) == 0);
}

TEST_CASE(
    "what is watched is told as it is: a list of none, a drawing by another way of writing it, a project that is stopped once",
    "[service][watch]") {
  Watched w;
  w.house.folder.put("out/batch.json", "of yesterday");
  const std::string tried = w.house.folder / "tried";
  w.house.order.tell = [tried](const auto&, const std::vector<SourceText>& sources, bool) -> std::string {
    if (sources.empty() || !sources.front().file.ends_with("/falls.yaml")) return "";
    std::ofstream(tried, std::ios::app) << "x";
    std::abort();
  };
  w.begin();
  CHECK(soon([&] { return w.house.get("batch.json").find("\"made\": 0") != std::string::npos; }));
  w.arrive("pieces.svg", kDrawing);
  w.arrive("d.yaml", drawn("./pieces.svg"));
  CHECK(soon([&] { return w.house.has("d.pdf"); }));
  const std::string first = w.house.get("d.pdf");
  w.arrive("pieces.svg", kDrawing + "\n");
  CHECK(soon([&] { return w.house.get("d.pdf") != first; }));

  const std::string falls = skirt("Falls");
  w.arrive("falls.yaml", falls);
  CHECK(soon([&] { return w.house.has("falls.problems.txt"); }));
  w.arrive("falls.yaml", falls);  // news of it, and nothing is new
  w.arrive("later.yaml", skirt("Later"));
  CHECK(soon([&] { return w.house.has("later.pdf"); }));
  CHECK(w.house.folder.get("tried") == "x");
  CHECK(w.stop(SIGTERM) == 0);
}

TEST_CASE("what happens while a packet is made is not missed", "[service][watch]") {
  Watched w;
  const std::string tried = w.house.folder / "tried", go = w.house.folder / "go";
  w.house.order.tell = [tried, go](const auto&, const std::vector<SourceText>& sources, bool) -> std::string {
    if (!sources.empty() && sources.front().file.ends_with("/d.yaml")) std::ofstream(tried, std::ios::app) << "x";
    soon([&] { return fs::exists(go); });
    return "";
  };
  w.begin();
  w.arrive("pieces.svg", kDrawing);
  w.arrive("d.yaml", drawn("pieces.svg"));
  CHECK(soon([&] { return fs::exists(tried); }));
  w.arrive("pieces.svg", kDrawing + "\n");  // after it was read
  w.arrive("b/late.yaml", skirt("Late"));   // waits, and its folder goes
  usleep(100'000);
  fs::rename(w.house.folder / "in/b", w.house.folder / "away");
  usleep(100'000);
  w.house.folder.put("go", "");
  CHECK(soon([&] {
    return w.house.folder.get("tried") == "xx" &&
           w.house.folder.get("health").find("watching\",\"projects\":1,") != std::string::npos;
  }));
  CHECK_FALSE(w.house.has("b/late.problems.txt"));

  fs::remove(go);
  w.arrive("two.yml", skirt("Second"));
  CHECK(soon([&] { return w.house.folder.get("health").find("working") != std::string::npos; }));
  w.arrive("two.yaml", skirt("First"));  // while the other is made, whose packet is now its own
  usleep(100'000);
  w.house.folder.put("go", "");
  CHECK(soon([&] {
    return w.house.has("two.yml.problems.txt") &&
           w.house.folder.get("health").find("watching\",\"projects\":3,\"failed\":1") != std::string::npos;
  }));
  CHECK(w.stop(SIGTERM) == 0);
}

TEST_CASE("a list that could not be written is tried again", "[service][watch]") {
  Watched w;
  w.house.folder.put("out/batch.json/in the way", "");
  w.arrive("a.yaml", skirt("A"));
  w.begin();
  CHECK(soon([&] { return w.house.has("a.pdf") && w.house.folder.get("health").find("watching") != std::string::npos; }));
  fs::remove_all(w.house.folder / "out/batch.json");
  CHECK(soon([&] { return fs::is_regular_file(w.house.folder / "out/batch.json"); }));
  CHECK(w.stop(SIGTERM) == 1);  // it said so
}
