#pragma once

#include "archive/contents.h"
#include "archive/fault.h"
#include "archive/values.h"
#include "base/result.h"

#include <chrono>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace thawslip::archive {

class Connection;

/// Whether an archive that is not there is made, and whether it will be changed.
enum class Mode { Read, Write };

/// Which bags a question is about.
enum class Which { InFreezer, All };

/// What has been printed and where its bags are: one SQLite file, readable by its owner alone.
///
/// Each change is one transaction, on disk before the function returns: write-ahead log, synced
/// at every commit. (SQLite, "PRAGMA Statements", synchronous: with FULL a commit outlasts a loss
/// of power; "Write-Ahead Logging": readers and one writer do not wait for each other.) Whatever
/// happens, the file holds what it held before or what it holds after.
///
/// Times and dates come from the caller; the archive asks no clock, and orders prints by the
/// order they were recorded in, so that a clock set back confuses nothing.
///
/// Everything but `open` throws ArchiveFailure where the disk or another program gets in the way.
class Archive {
public:
    /// Opens the archive at `path`. Writing makes it and its folder where they are missing, mode
    /// 0600 and 0700, and leads an older schema forward; a newer one, or a file of another kind,
    /// is refused untouched.
    /// \param patience how long to wait for another program that is writing
    static Result<Archive, ArchiveFault>
    open(const std::string& path, Mode mode,
         std::chrono::milliseconds patience = std::chrono::seconds{5});

    Archive(Archive&&) noexcept;
    Archive& operator=(Archive&&) noexcept;
    ~Archive();

    /// Remembers a print, the descriptions it was made of, and their bags (as frozen).
    ///
    /// The same description again adds nothing, and the same print again only moves `last_at`.
    /// An edited description is a new revision of the one that it shares a bag's id with, or the
    /// file and the day. Bags are known by their id; where the dish's name was mended, so that
    /// its ids changed, a bag is the one of the same number of the dish at the same position,
    /// made the same day, of the same allergens and storage classes, whose name differs by a slip
    /// of the keyboard (archive/mended_name.h) and which the edited description no longer has.
    /// Anything less sure counts as new bags: a label that tells of another bag's food is worse
    /// than one that is listed twice. Bags that an edited description no longer has stay: their
    /// labels may stick on something. An id that another dish has already throws a Clash.
    Recorded record(const PrintRecord& print);

    std::optional<Bag> bag(const std::string& id); ///< by any id it ever had
    std::vector<Bag> bags(Which which);            ///< soonest keep-until date first

    /// Bags whose dish has a word that begins with each of `words`, in the same order.
    /// \param words folded as PackageRecord::words; anything but letters and digits parts them
    std::vector<Bag> find(std::string_view words, Which which);

    /// Ids there are that one slip away from `typed` (a wrong, missing, additional or swapped
    /// symbol); sorted. \param typed letters and digits, capitals
    std::vector<std::string> near_ids(std::string_view typed);

    /// All or none. \param ids known ones \returns how many changed their state
    int set_state(std::span<const std::string> ids, State state, const std::string& at);

    StoredDay day(DayKey key);
    std::vector<StoredDay> revisions(int lineage); ///< the oldest first

    std::vector<StoredPrint> prints_of(DayKey day);        ///< the newest first
    std::vector<StoredPrint> prints_on(kitchen::Date day); ///< in the order recorded
    std::vector<Bag> bags_of(DayKey day); ///< in the order of the description, any state

    Contents contents();
    /// Adds what is not here yet, all or nothing. A bag is in both when it has the same id, and
    /// either its description is in both or its dish, day, allergens and storage classes are the
    /// same; of such a bag the later state and the later description hold. A bag of the same id
    /// whose food differs, or may differ, is left out and named.
    /// Throws ArchiveFailure, Damaged, where `other` cannot be.
    Merged merge(const Contents& other);

    /// Everything that is wrong with the file, in SQLite's words; nothing when it is sound.
    std::vector<std::string> check();

    /// Copies the archive to `file` while others may write to it. `file` must not exist.
    void back_up(const std::string& file);

private:
    explicit Archive(std::unique_ptr<Connection> connection);
    std::unique_ptr<Connection> connection_;
};

} // namespace thawslip::archive
