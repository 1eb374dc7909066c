#include "archive/events.h"

#include "archive/archive.h"
#include "archive/limits.h"
#include "archive/tables/rows.h"

#include <algorithm>
#include <charconv>

namespace thawslip::archive {
namespace {

constexpr std::int64_t thousandths = 1000;

/// The number that stands in `text` from `at` on; nothing where there are not `count` digits.
std::optional<int> digits(std::string_view text, std::size_t at, std::size_t count) {
    int number = 0;
    const auto* begin = text.data() + std::min(at, text.size());
    const auto* end = text.data() + std::min(at + count, text.size());
    const auto read = std::from_chars(begin, end, number);
    return read.ec == std::errc{} && read.ptr == begin + count ? std::optional{number}
                                                               : std::nullopt;
}

/// The last moment that is known of the bag; nothing where there is none.
std::optional<std::int64_t> last_moment(Connection& connection, std::int64_t bag) {
    auto& row = connection.statement("SELECT max(ordered) FROM bag_event WHERE bag = ?").with(bag);
    row.next();
    return row.is_nothing(0) ? std::nullopt : std::optional{row.integer(0)};
}

} // namespace

std::int64_t seconds_of(const std::string& at) {
    const auto day = kitchen::parse_iso(at.substr(0, 10));
    const auto hours = digits(at, 11, 2);
    const auto minutes = digits(at, 14, 2);
    const auto seconds = digits(at, 17, 2);
    if (!day || !hours || !minutes || !seconds) {
        return 0;
    }
    const auto days = std::chrono::sys_days{*day}.time_since_epoch().count();
    return ((std::int64_t{days} * 24 + *hours) * 60 + *minutes) * 60 + *seconds;
}

std::int64_t next_seq(Connection& connection, const std::string& station) {
    auto& row =
        connection.statement("SELECT coalesce(max(seq), 0) FROM bag_event WHERE station = ?")
            .with(station);
    row.next();
    return std::clamp<std::int64_t>(row.integer(0), 0, Most::seq - 1) + 1;
}

void insert_event(Connection& connection, std::int64_t bag, const BagEvent& event) {
    connection
        .statement("INSERT OR IGNORE INTO bag_event (bag, ordered, station, seq, state, at, clock, "
                   "clock_offset, boot, uptime) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
        .with(bag)
        .with(event.ordered)
        .with(event.station)
        .with(event.seq)
        .with(word_of(event.state))
        .with(event.at)
        .with(event.clock)
        .with(event.offset)
        .with(event.boot)
        .with(event.uptime)
        .run();
}

bool add_event(Connection& connection, std::int64_t bag, State state, const std::string& at,
               const Station& station, std::int64_t seq) {
    const auto clock =
        std::clamp<std::int64_t>(station.clock.value_or(seconds_of(at)), 0, Most::clock);
    auto ordered =
        std::clamp<std::int64_t>((clock + station.offset) * thousandths, 0, Most::ordered);
    if (const auto last = last_moment(connection, bag)) {
        ordered = std::max(ordered, std::min(*last, Most::ordered - 1) + 1);
    }
    insert_event(connection, bag,
                 {ordered, station.name, seq, state, at, clock, station.offset, station.boot,
                  station.uptime});
    return find_state(connection, bag);
}

bool find_state(Connection& connection, std::int64_t bag) {
    auto& rows =
        connection
            .statement("UPDATE bag SET (state, changed) = (SELECT state, at FROM bag_event WHERE "
                       "bag = ?1 ORDER BY ordered DESC, station DESC, seq DESC, state DESC, at "
                       "DESC LIMIT 1) WHERE id = ?1 AND (state, changed) IS NOT (SELECT state, at "
                       "FROM bag_event WHERE bag = ?1 ORDER BY ordered DESC, station DESC, seq "
                       "DESC, state DESC, at DESC LIMIT 1) RETURNING id")
            .with(bag);
    bool changed = false;
    while (rows.next()) {
        changed = true;
    }
    return changed;
}

std::vector<BagEvent> events_of(Connection& connection, std::int64_t bag) {
    auto& rows =
        connection
            .statement("SELECT ordered, station, seq, state, at, clock, clock_offset, boot, "
                       "uptime FROM bag_event WHERE bag = ? ORDER BY ordered, station, seq, "
                       "state, at")
            .with(bag);
    std::vector<BagEvent> events;
    while (rows.next()) {
        events.push_back({rows.integer(0), rows.text(1), rows.integer(2),
                          state_of(rows.text(3)).value_or(State::Frozen), rows.text(4),
                          rows.integer(5), rows.integer(6), rows.text(7), rows.integer(8)});
    }
    return events;
}

int Archive::set_state(std::span<const std::string> ids, State state, const std::string& at,
                       const Station& station) {
    const Question question{*connection_};
    Transaction transaction{connection_->database()};
    const auto seq = next_seq(*connection_, station.name);
    int changed = 0;
    for (const auto& id : ids) {
        auto& row = connection_
                        ->statement("SELECT id FROM bag WHERE id = (SELECT bag FROM bag_id WHERE "
                                    "id = ?) AND state <> ?")
                        .with(id)
                        .with(word_of(state));
        if (row.next()) {
            const auto bag = row.integer(0);
            changed += add_event(*connection_, bag, state, at, station, seq) ? 1 : 0;
        }
    }
    connection_->rest();
    transaction.commit();
    return changed;
}

} // namespace thawslip::archive
