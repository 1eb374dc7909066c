#pragma once

#include "archive/tables/connection.h"
#include "archive/values.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace thawslip::archive {

// What recording and merging share. All inside a transaction of the caller.

/// What a description is found again by.
std::int64_t hash_of_description(std::string_view description);

/// Where a revision stands among those of its description, whichever archive they were recorded
/// in: the time it was recorded at in thousandths of a second, but later than all that were known.
/// \param last of the newest known one; 0: there is none
std::int64_t order_after(std::int64_t last, const std::string& recorded);
std::int64_t last_order(Connection& connection, int lineage); ///< 0: none

/// A day that was added, and its packages, by their rows.
struct NewDay {
    std::int64_t row = 0;
    std::vector<std::int64_t> packages;
};
/// Adds the day and its packages; their bags and ids are for the caller.
NewDay insert_day(Connection& connection, const DayRecord& day, int lineage, int revision,
                  const std::string& recorded, std::int64_t ordered);
/// The packages of a day in order, without ids; and their rows.
std::vector<PackageRecord> packages_of(Connection& connection, std::int64_t day);
void ask_packages_ahead(Connection& connection, std::int64_t day);
std::vector<std::int64_t> package_rows(Connection& connection, std::int64_t day);
/// The newest revision of a description; 0 when there is none.
std::int64_t newest_revision(Connection& connection, int lineage);
/// Counts the revisions of a description again, in their order.
void number_revisions(Connection& connection, int lineage);
/// The row of the bag that has this id; 0 when there is none.
std::int64_t bag_row(Connection& connection, const std::string& id);
/// The rows of ids that were asked about; 0: there is none.
using IdRows = std::unordered_map<std::string, std::int64_t>;
enum class When { Now, Later };
/// The same of many ids, in few questions. \param when later: what will be asked is sent with the
/// next question, and nothing is answered yet
IdRows bag_rows(Connection& connection, std::span<const std::string> ids, When when = When::Now);
/// The same, or the bag that it is where it was renamed.
std::int64_t living_bag(Connection& connection, const std::string& id);
int lineage_of_bag(Connection& connection, std::int64_t bag);
int lineage_of_day(Connection& connection, std::int64_t day); ///< 0: there is no such day
/// A bag as it is, also where it was renamed.
Bag bag_as_it_is(Connection& connection, std::int64_t bag);
/// The package that a bag belongs to, without ids.
PackageRecord package_of_bag(Connection& connection, std::int64_t bag);
void ask_package_ahead(Connection& connection, std::int64_t bag);
/// Its first event is for the caller, who may know the state that it will say already.
std::int64_t insert_bag(Connection& connection, std::int64_t package, int number,
                        State state = State::Frozen, const std::string& changed = {},
                        const std::optional<std::string>& place = {});
void insert_id(Connection& connection, const std::string& id, std::int64_t bag, bool newest);
int next_lineage(Connection& connection);
int last_revision(Connection& connection, int lineage);

/// Has a bag described by another revision's package.
void describe_bag(Connection& connection, std::int64_t bag, std::int64_t package, int number);
/// \param id one of the bag's
void make_newest(Connection& connection, std::int64_t bag, const std::string& id);

/// Gives bags that have no id that holds, or one that cannot be, the id that follows from their
/// batch and number, unless that is another's.
void put_ids_right(Connection& connection);

/// Has what a new row needs to know sent with the next question.
void ask_rows_ahead(Connection& connection);

/// Whether this is a station's copy of an archive on a server.
bool is_of_station(Connection& connection);

/// Notes where the last print on a stock stopped.
void put_sheet(Connection& connection, const UsedSheet& sheet);

/// The print with this setup of these days; 0 when there is none.
std::int64_t print_row(Connection& connection, const PrintSetup& setup,
                       const std::vector<std::int64_t>& days);
std::vector<SetupFile> files_of_print(Connection& connection, std::int64_t print);
void ask_files_ahead(Connection& connection, std::int64_t print);
std::int64_t insert_print(Connection& connection, const StoredPrint& print); ///< \returns its row
bool has_print_key(Connection& connection, const std::string& key);
void ask_print_key_ahead(Connection& connection, const std::string& key);
bool holds_no_print(Connection& connection);
/// That something was printed once more; what has the key already is not counted again.
void insert_print_key(Connection& connection, std::int64_t print, const std::string& key,
                      const std::string& at, const std::string& station);

} // namespace thawslip::archive
