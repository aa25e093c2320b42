#include "files/files.h"

#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>

#include "support/catch.h"
#include "support/scratch_folder.h"

using namespace gownsheaf;
using Catch::Matchers::StartsWith;
using gownsheaf::test::ScratchFolder;

TEST_CASE("sha256 gives the digests published with FIPS 180-4") {
  // NIST, "Secure Hash Standard" examples (SHA256.pdf): one block, two blocks; the empty text and the million letters
  // are in the NIST test vectors for FIPS 180.
  CHECK(sha256("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(sha256("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  CHECK(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  CHECK(sha256(std::string(1000000, 'a')) == "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("a file that holds still the same is told from one that grew, shrank or changed") {
  const test::ScratchFolder folder;
  const std::string bytes(150000, 'x');  // more than is read at once
  folder.put("face.ttf", bytes);
  CHECK(holds_still(folder / "face.ttf", bytes));
  CHECK_FALSE(holds_still(folder / "face.ttf", bytes + "x"));
  CHECK_FALSE(holds_still(folder / "face.ttf", bytes.substr(1)));
  CHECK_FALSE(holds_still(folder / "face.ttf", bytes.substr(1) + "y"));
  CHECK_FALSE(holds_still(folder / "face.ttf", ""));
  CHECK_FALSE(holds_still(folder / "none.ttf", bytes));
  CHECK_FALSE(holds_still(folder.path(), bytes));
  folder.put("empty", "");
  CHECK(holds_still(folder / "empty", ""));
}

TEST_CASE("a named file is read whole, up to its limit") {
  const ScratchFolder folder;
  folder.put("gown.yaml", std::string("a: 1\n\0b", 7));
  CHECK(read_named_file(folder / "gown.yaml", 7).value == std::string("a: 1\n\0b", 7));
  const auto too_large = read_named_file(folder / "gown.yaml", 6);
  CHECK_FALSE(too_large.ok());
  CHECK(too_large.fault.sentence == "`" + (folder / "gown.yaml") + "` is larger than 6 bytes, the most that is read.");
  folder.put("big.yaml", std::string(kLargestProjectFile + 1, 'x'));
  CHECK(read_named_file(folder / "big.yaml", kLargestProjectFile).fault.sentence ==
        "`" + (folder / "big.yaml") + "` is larger than 2 MiB, the most that is read.");
}

TEST_CASE("what is no ordinary file is refused in words, and at once") {
  const ScratchFolder folder;
  CHECK(read_named_file(folder / "none.yaml", 99).fault.sentence ==
        "`" + (folder / "none.yaml") + "` could not be read: there is no such file or folder.");
  CHECK(read_named_file(folder.path(), 99).fault.sentence ==
        "`" + folder.path() + "` could not be read: it is a folder, not a file.");
  REQUIRE(::mkfifo((folder / "pipe").c_str(), 0600) == 0);
  CHECK(read_named_file(folder / "pipe", 99).fault.sentence == "`" + (folder / "pipe") + "` is not an ordinary file.");
  CHECK(read_named_file("/dev/zero", 99).fault.sentence == "`/dev/zero` is not an ordinary file.");
  CHECK_FALSE(read_named_file("", 99).ok());
  CHECK_FALSE(read_named_file(std::string("a\0b", 3), 99).ok());
}

TEST_CASE("below a folder: its own files are read, links within it too, and nothing else") {
  const ScratchFolder folder;
  folder.put("secret.txt", "not yours");
  folder.put("project/pieces.svg", "front");
  folder.put("project/drawings/back.svg", "back");
  folder.put("projects/other.svg", "other");
  const std::string root = folder / "project";
  CHECK(read_below(root, "pieces.svg", 99).value == "front");
  CHECK(read_below(root, "drawings/back.svg", 99).value == "back");
  CHECK(read_below(root, "./drawings//back.svg", 99).value == "back");
  std::filesystem::create_symlink("drawings/back.svg", root + "/inner.svg");
  CHECK(read_below(root, "inner.svg", 99).value == "back");

  std::filesystem::create_symlink(folder / "secret.txt", root + "/out.svg");
  std::filesystem::create_symlink(folder.path(), root + "/up");
  std::filesystem::create_symlink(folder / "projects", root + "/near");
  std::filesystem::create_symlink("ring.svg", root + "/ring.svg");
  for (const char* name : {"../secret.txt", "drawings/../../secret.txt", "/etc/passwd", "out.svg", "up/secret.txt",
                           "near/other.svg", "..", "up/project/pieces.svg/.."}) {
    CAPTURE(name);
    const auto result = read_below(root, name, 99);
    CHECK_FALSE(result.ok());
    CHECK(result.fault.sentence == "`" + std::string(name) + "` lies outside the project's folder.");
  }
  // Round about through a link and back in again is still inside.
  CHECK(read_below(root, "up/project/pieces.svg", 99).value == "front");
  CHECK_FALSE(read_below(root, "ring.svg", 99).ok());
  CHECK_FALSE(read_below(root, "none.svg", 99).ok());
  CHECK_FALSE(read_below(root, "drawings", 99).ok());
  CHECK_FALSE(read_below(root, ".", 99).ok());
  CHECK_FALSE(read_below(root, "", 99).ok());
  CHECK_FALSE(read_below(root, "pieces.svg", 4).ok());
  CHECK_FALSE(read_below(folder / "no such project", "pieces.svg", 99).ok());
}

TEST_CASE("files of a folder are listed by name in the order of their bytes") {
  const ScratchFolder folder;
  for (const char* name : {"b.yaml", "a.yaml", "B.yaml", "a10.yaml", "a2.yaml", "note.txt", "é.yaml"}) folder.put(name, "x");
  std::filesystem::create_directory(folder / "sub.yaml");
  const auto listed = list_files(folder.path(), ".yaml");
  REQUIRE(listed.ok());
  CHECK(*listed.value == std::vector<std::string>{"B.yaml", "a.yaml", "a10.yaml", "a2.yaml", "b.yaml", "é.yaml"});
  CHECK_THAT(list_files(folder / "none", "").fault.sentence, StartsWith("The folder `"));
}

TEST_CASE("names are parted from folders") {
  CHECK(folder_of("gown.yaml") == ".");
  CHECK(folder_of("/gown.yaml") == "/");
  CHECK(folder_of("a/b/gown.yaml") == "a/b");
  CHECK(file_name_of("a/b/gown.yaml") == "gown.yaml");
  CHECK(file_name_of("gown.yaml") == "gown.yaml");
  CHECK(file_name_of("a/") == "");
}

TEST_CASE("several files are written together and nothing else is left behind") {
  const ScratchFolder folder;
  folder.put("gown.pdf", "old");
  CHECK_FALSE(write_whole({{folder / "gown.figures.json", "{}"}, {folder / "gown.pdf", std::string(300000, 'p')}}));
  CHECK(folder.get("gown.figures.json") == "{}");
  CHECK(folder.get("gown.pdf") == std::string(300000, 'p'));
  CHECK(folder.count_of_files() == 2);
  CHECK_FALSE(write_whole({}));
  CHECK_FALSE(write_whole({{folder / "empty.pdf", ""}}));
  CHECK(exists(folder / "empty.pdf"));
}

TEST_CASE("a fault in a later file leaves the earlier ones as they were") {
  const ScratchFolder folder;
  folder.put("gown.pdf", "old");
  std::filesystem::create_directory(folder / "taken");
  const FileToWrite good{folder / "gown.pdf", "new"};
  struct Bad {
    std::string path, words;
  };
  for (const Bad& bad :
       {Bad{folder / "missing/gown.json", "there is no such file or folder"}, Bad{folder / "taken", "it is a folder, not a file"},
        Bad{folder / "gown.pdf/x", "a part of the path is a file, not a folder"},
        Bad{folder / "new/", "it is a folder, not a file"}}) {
    CAPTURE(bad.path);
    const auto fault = write_whole({good, {bad.path, "x"}});
    REQUIRE(fault);
    CHECK(fault->sentence == "`" + bad.path + "` could not be written: " + bad.words + ".");
    CHECK(folder.get("gown.pdf") == "old");
    CHECK(folder.count_of_files() == 2);
  }
  CHECK(write_whole({good, good})->sentence == "`" + good.path + "` would be written twice.");
  CHECK(write_whole({good, {"", "x"}}));
  CHECK(folder.get("gown.pdf") == "old");
  CHECK(folder.count_of_files() == 2);
}

TEST_CASE("a device is never replaced by a file") {
  const auto fault = write_whole({{"/dev/full", "x"}});
  REQUIRE(fault);
  CHECK(fault->sentence == "`/dev/full` is not an ordinary file, so it is left alone.");
  struct stat about {};
  REQUIRE(::stat("/dev/full", &about) == 0);
  CHECK(S_ISCHR(about.st_mode));
}

TEST_CASE("writing through a link keeps the link and changes what it points at") {
  const ScratchFolder folder;
  folder.put("kept/gown.pdf", "old");
  std::filesystem::create_symlink("kept/gown.pdf", folder / "gown.pdf");
  CHECK_FALSE(write_whole({{folder / "gown.pdf", "new"}}));
  CHECK(std::filesystem::is_symlink(folder / "gown.pdf"));
  CHECK(folder.get("kept/gown.pdf") == "new");
}

TEST_CASE("a write that the system cuts short is a fault, the old file stays, and no draft is left") {
  // A limit on the size of files makes write() stop in the middle, as a full disk does. It is set in a child process,
  // since it would hold for all that follow.
  const ScratchFolder folder;
  folder.put("gown.pdf", "old");
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    ::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{1000, 1000};
    if (::setrlimit(RLIMIT_FSIZE, &limit) != 0) ::_exit(3);
    const auto fault = write_whole({{folder / "gown.json", "{}"}, {folder / "gown.pdf", std::string(5000, 'p')}});
    ::_exit(fault && fault->sentence.find("larger than is allowed") != std::string::npos ? 0 : 1);
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  REQUIRE(WIFEXITED(status));
  CHECK(WEXITSTATUS(status) == 0);
  CHECK(folder.get("gown.pdf") == "old");
  CHECK_FALSE(exists(folder / "gown.json"));
  CHECK(folder.count_of_files() == 1);
}

TEST_CASE("a folder that may not be written in is a fault") {
  if (::geteuid() == 0) {
    WARN("not tried: the superuser may write everywhere");
    return;
  }
  const ScratchFolder folder;
  folder.put("gown.pdf", "old");
  ::chmod(folder.path().c_str(), 0500);
  const auto fault = write_whole({{folder / "gown.pdf", "new"}});
  ::chmod(folder.path().c_str(), 0700);
  REQUIRE(fault);
  CHECK(fault->sentence == "`" + (folder / "gown.pdf") + "` could not be written: you have no permission for it.");
  CHECK(folder.get("gown.pdf") == "old");
}
