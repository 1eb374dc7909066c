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

/// Whether an archive that is not there is made, and whether it will be changed. `Copy`: it is read
/// as a copy in memory, and neither the file nor what stands beside it changes, not even its
/// schema.
enum class Mode { Read, Write, Copy };

/// Whether two archives are of one kitchen, so that equal ids of equal food are the same bags, or
/// may be of two, so that only what one has from the other is the same for sure.
enum class Kitchens { MayDiffer, AreOne };

/// Which bags a question is about. Those that were renamed are others by now, and never among them.
enum class Which { InFreezer, All };

/// What has been printed and where its bags are: one SQLite file, readable by its owner alone, or
/// one kitchen on a PostgreSQL server, readable by its members.
///
/// What follows is said of files; of a server, archive/tables/server/server.h.
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
    /// Opens the archive at `path`, or at an address "postgresql://…" (archive/tables/server/
    /// address.h), where it must have been made by whoever keeps the server. Writing makes it and
    /// its folder where they are missing, mode 0600 and 0700, and leads an older schema forward; a
    /// newer one, or a file of another kind, is refused untouched. \param patience how long to wait
    /// for another program that is writing
    static Result<Archive, ArchiveFault>
    open(const std::string& path, Mode mode,
         std::chrono::milliseconds patience = std::chrono::seconds{5});

    /// Opens the archive at an address for writing where its server is reached; what it is asked
    /// for within `budget` from now is answered, and behind it everything throws Away.
    static Result<Archive, ArchiveFault> reach(const std::string& address,
                                               std::chrono::milliseconds budget);

    /// Of which server's archive this file is a station's copy; nothing: of none.
    std::optional<Link> link();
    void put_link(const Link& link);

    Archive(Archive&&) noexcept;
    Archive& operator=(Archive&&) noexcept;
    ~Archive();

    /// Which batch each package of a description is, so that its bags' ids can be made, and which
    /// of them only the cook can know. DEVELOPERS.md, "The same bags", has the rules.
    /// \param day its packages as they were planned, as the first batches of their names
    Settled settle(const DayRecord& day, const WhichBatch& which);

    /// Remembers a print, the descriptions it was made of, and their bags (as frozen), which must
    /// be the batches that `settle` gives.
    ///
    /// The same description again adds nothing, and the same print again only moves `last_at`;
    /// recorded a second time, under the key it had, it changes nothing at all.
    /// An edited description is a new revision of the one that it has bags of. Where the dish's
    /// name was mended, so that its ids changed, a bag is the one of the same number of the dish
    /// at the same position, made the same day, of the same allergens and storage classes, whose
    /// name differs by a slip of the keyboard (archive/mended_name.h) and which the edited
    /// description no longer has. Anything less sure counts as new bags: a label that tells of
    /// another bag's food is worse than one that is listed twice. Bags that an edited description
    /// no longer has stay: their labels may stick on something.
    ///
    /// Throws a Clash where a batch is no longer what `settle` gave, for another program has
    /// printed meanwhile, and where an id is on another bag.
    /// \param publish makes the print visible: called when all of this is known and nobody else
    /// can write, before anything is written here. What it throws takes everything back.
    Recorded record(const PrintRecord& print, const std::function<void()>& publish = {});

    std::optional<Bag> bag(const std::string& id); ///< by any id it ever had, or what it is now
    std::vector<Bag> bags(Which which);            ///< soonest keep-until date first

    /// Bags whose dish has a word that begins with each of `words`, in the same order.
    /// \param words folded as PackageRecord::words; anything but letters and digits parts them
    std::vector<Bag> find(std::string_view words, Which which);

    /// Ids there are that one slip away from `typed` (a wrong, missing, additional or swapped
    /// symbol); sorted. \param typed letters and digits, capitals
    std::vector<std::string> near_ids(std::string_view typed);

    /// Notes that bags came into a state, or to a place: all or none. The last that was noted
    /// holds, whatever the clock says. \param ids known ones \returns of how many that is new
    int note(std::span<const std::string> ids, const BagChange& change, const std::string& at,
             const Station& station = {});

    int set_state(std::span<const std::string> ids, State state, const std::string& at,
                  const Station& station = {}) {
        return note(ids, {state}, at, station);
    }

    /// Notes of pairs of bags that they are one, all or none: the first is known by the id of the
    /// second from now on. Where the first was taken out, eaten or moved and the second was not,
    /// that is noted of the second.
    /// \param pairs ids of two bags each, none of them renamed already
    void join(std::span<const std::pair<std::string, std::string>> pairs, const std::string& at,
              const Station& station = {});

    /// The last command of the station that noted something of bags and is not taken back yet;
    /// prints are none. 0: there is no such command.
    std::int64_t last_command(const Station& station = {});

    /// Takes back the last command of the station. \param only the one that it is to be; nothing:
    /// whichever it is \returns the bags that it was noted of; none: there is no such command
    std::vector<UndoneBag> undo(const std::string& at, const Station& station = {},
                                std::optional<std::int64_t> only = {});

    /// What happened to a bag, by any of its ids, and to those that were renamed to it, in order.
    std::vector<PastEvent> history(const std::string& id);

    StoredDay day(DayKey key);
    std::vector<StoredDay> revisions(int lineage); ///< the oldest first

    std::vector<StoredPrint> prints_of(DayKey day); ///< the newest first
    /// How the newest of them was made, without files of the cook's own; nothing: there is none.
    std::optional<PrintSetup> newest_setup(DayKey day);
    std::vector<StoredPrint> prints_on(kitchen::Date day); ///< in the order recorded
    /// Each day on which something was printed, with what, in order of the days.
    std::vector<std::pair<kitchen::Date, std::string>> days_printed();
    std::vector<Bag> bags_of(DayKey day); ///< in the order of the description, any state

    /// Whether the bag with this id is one of those that the day's `package` (its index) tells of.
    /// It is not where that description came from another archive and the bag was left out.
    bool is_of(const std::string& id, DayKey day, std::size_t package);

    /// Where the last print on a stock stopped; nothing where that is not known.
    std::optional<UsedSheet> used_sheet(const std::string& stock);
    /// Notes it of a print that is not recorded, as of one printed again.
    void use_sheet(const UsedSheet& sheet);

    Contents contents();
    /// What is here and not in the other, with the descriptions that it is of: what `merge` there
    /// would add. A part of `contents`, or where that is nearly all, more.
    Contents missing_in(Archive& other);
    /// Adds what is not here yet, all or nothing; in whatever order archives are merged, they come
    /// to hold the same, as long as no ids clash. A bag is in both when it has the same id and its
    /// batch the same origin or, in one kitchen, the same food, servings and weight. Of such a bag
    /// all events are kept, and the description that was recorded last holds. A bag of the same id
    /// that may be another is left out and named, with all bags of its batch.
    /// Throws ArchiveFailure, Damaged, where `other` cannot be.
    Merged merge(const Contents& other, Kitchens kitchens = Kitchens::MayDiffer);

    /// Everything that is wrong with the archive (archive/tables/soundness.h); nothing when it is
    /// sound.
    std::vector<std::string> check();
    /// The same; where nothing is wrong, `contents` become all that it holds.
    std::vector<std::string> check(Contents& contents);

    /// The first description that is no longer what was recorded; nothing where none is.
    std::optional<StoredDay> first_rotten_day();
    std::vector<StoredDay> days();                   ///< every revision, in the order recorded
    std::vector<PackageRecord> packages(DayKey day); ///< in order, without ids

    /// Has a package say what a description that was read again says of its dish: all but its
    /// batch and where that comes from.
    void put_right(DayKey day, int position, const PackageRecord& described);
    /// The same of the day itself.
    void put_right(DayKey day, kitchen::Date made, const std::string& kitchen);

    /// Copies the archive to `file` while others may write to it. `file` must not exist, and
    /// appears whole or not at all.
    void back_up(const std::string& file);

    /// The same of the archive at `path` as it is, whatever its schema: neither is migrated.
    static std::optional<ArchiveFault>
    back_up(const std::string& path, const std::string& file,
            std::chrono::milliseconds patience = std::chrono::seconds{5});

private:
    friend class Rebuild; // restore.cpp
    explicit Archive(std::unique_ptr<Connection> connection);
    static Archive open_on_server(const std::string& address, Mode mode,
                                  std::chrono::milliseconds patience);
    std::unique_ptr<Connection> connection_;
};

} // namespace thawslip::archive
