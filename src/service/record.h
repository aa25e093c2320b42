// What is kept of a packet that was made: what it was made of, which files it is, and what the list of packets says of it. It lies in
// the folder of packets under .gownsheaf/made/, and is written with the packet, before the PDF. A packet is current when the
// fingerprint is today's and every file holds the bytes that are recorded.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "files/files.h"
#include "make_packet.h"

namespace gownsheaf {

struct MadeFile {
  std::string name, hash;
};  // beside the packet

struct PacketRecord {
  std::string project;  // below the folder of projects
  std::string fingerprint;
  std::vector<std::string> drawings;  // in the order they were read
  std::vector<MadeFile> files;        // the PDF last
  int pages = 0;
  PacketFacts about;
};

std::string text_of(const PacketRecord& record);
std::optional<PacketRecord> record_of(std::string_view text);  // nothing where it is damaged

// What is kept of a project that a ceiling stopped or that the program fell over: it is not tried again while all of this is the same.
struct StoppedRecord {
  std::string project;
  std::string fingerprint, ceilings;
  std::vector<std::string> drawings;
  std::string problem;
};

std::string text_of(const StoppedRecord& record);
std::optional<StoppedRecord> stopped_record_of(std::string_view text);

inline constexpr std::size_t kLargestRecord = 1u << 20, kLargestOutput = 512u << 20, kLargestLays = 64u << 20;

// Where things lie in the folder of packets.
class OutFolder {
 public:
  explicit OutFolder(std::string folder) : folder_(std::move(folder)) {}
  const std::string& path() const { return folder_; }
  std::string file(const std::string& below) const { return folder_ + "/" + below; }
  std::string own() const { return folder_ + "/.gownsheaf"; }
  std::string records() const { return own() + "/made"; }
  std::string record(const std::string& stem) const { return records() + "/" + stem + ".made"; }
  std::string lays(const std::string& stem) const { return own() + "/lays/" + stem + ".lays"; }
  std::string stopped(const std::string& stem) const { return own() + "/stopped/" + stem + ".stopped"; }
  // A folder of this name tells that the one among the packets was made by the program, so that it may be removed when it is empty.
  std::string folder_mark(const std::string& below) const { return own() + "/folders/" + below; }
  std::string problems(const std::string& stem) const { return file(stem + ".problems.txt"); }

  std::optional<PacketRecord> read_record(const std::string& stem) const;
  // The folder of a packet, and those above it; each that is made is marked as the program's own.
  std::optional<FileFault> make_folder_of(const std::string& stem) const;
  // Those so marked, each after the ones in it.
  std::vector<std::string> own_folders() const;
  // What is kept of one beside its packet, when its packet has gone.
  std::vector<FileFault> forget(const std::string& stem) const;

  std::optional<StoppedRecord> read_stopped(const std::string& stem) const;
  // The stems of all that are kept, sorted.
  std::vector<std::string> stopped_ones() const;
  // Every file of the record is there with its bytes.
  bool holds(const std::string& stem, const PacketRecord& record) const;
  // The stems of all records, sorted.
  std::vector<std::string> recorded() const;
  // Temporary files that a killed run left. `of`: only those of these stems (another share of the work may be going on);
  // nothing: all.
  int clear_temporaries(const std::vector<std::string>* of) const;
  // The stems of all files of problems that this program wrote, sorted.
  std::vector<std::string> problems_told() const;
  // A file of problems that this program wrote.
  std::optional<FileFault> clear_problems(const std::string& stem) const;
  std::optional<FileFault> write_problems(const std::string& stem, const std::string& messages) const;

 private:
  bool told_problems(const std::string& stem) const;

  std::string folder_;
};

}  // namespace gownsheaf
