#include "archive/events.h"

#include "archive/archive.h"
#include "archive/limits.h"
#include "archive/tables/rows.h"
#include "base/number_in.h"

#include <algorithm>
#include <tuple>

namespace thawslip::archive {
namespace {

constexpr std::int64_t thousandths = 1000;

/// The number that stands in `text` from `at` on; nothing where there are not `count` digits.
std::optional<int> digits(std::string_view text, std::size_t at, std::size_t count) {
    const auto part = text.substr(std::min(at, text.size()), count);
    return part.size() == count ? thawslip::number_in<int>(part) : std::nullopt;
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

namespace {

Statement& seq_question(Connection& connection, const std::string& station) {
    return connection.statement("SELECT coalesce(max(seq), 0) FROM bag_event WHERE station = ?")
        .with(station);
}

} // namespace

void ask_seq_ahead(Connection& connection, const std::string& station) {
    seq_question(connection, station).ahead();
}

std::int64_t next_seq(Connection& connection, const std::string& station) {
    auto& row = seq_question(connection, station);
    row.next();
    return std::clamp<std::int64_t>(row.integer(0), 0, Most::seq - 1) + 1;
}

void insert_event(Connection& connection, std::int64_t bag, const BagEvent& event) {
    auto& insert =
        connection
            .statement("INSERT INTO bag_event (bag, ordered, station, seq, state, at, "
                       "clock, clock_offset, boot, uptime, joined, undoes, place) VALUES (?, ?, ?, "
                       "?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING")
            .with(bag)
            .with(event.ordered)
            .with(event.station)
            .with(event.seq)
            .with(event.state ? word_of(*event.state) : std::string_view{""})
            .with(event.at)
            .with(event.clock)
            .with(event.offset)
            .with(event.boot)
            .with(event.uptime)
            .with(event.joined)
            .with(event.undoes);
    (event.place ? insert.with(*event.place) : insert.with_nothing()).run();
}

namespace {

/// An event that is of now, by the station's clock.
BagEvent event_of_now(const std::string& at, const Station& station, std::int64_t seq) {
    const auto clock =
        std::clamp<std::int64_t>(station.clock.value_or(seconds_of(at)), 0, Most::clock);
    const auto ordered =
        std::clamp<std::int64_t>((clock + station.offset) * thousandths, 0, Most::ordered);
    BagEvent event{ordered, station.name, seq, std::nullopt, at, clock, station.offset};
    event.boot = station.boot;
    event.uptime = station.uptime;
    return event;
}

// A literal, so that each whole statement is one too: events of a bag (?1) that nothing undid.
#define THAWSLIP_EVENTS_THAT_COUNT                                                                 \
    "FROM bag_event e WHERE bag = ?1 AND NOT EXISTS (SELECT 1 FROM bag_event u WHERE u.bag = "     \
    "e.bag AND u.undoes = e.seq AND u.station = e.station AND u.undoes <> 0) "
#define THAWSLIP_LAST "ORDER BY ordered DESC, station DESC, seq DESC, state DESC, at DESC LIMIT 1"

/// What is known of a bag by its events.
struct Known {
    std::string state;
    std::string changed;
    std::string joined;
};

std::optional<Known> known_at(Statement& row) {
    return row.next() ? std::optional{Known{row.text(0), row.text(1), row.text(2)}} : std::nullopt;
}

/// Whether what a bag was renamed to is there, and is not that bag itself.
bool leads_elsewhere(Connection& connection, std::int64_t bag, const std::string& joined) {
    const auto end = living_bag(connection, joined);
    return end != 0 && end != bag;
}

Statement& known_question(Connection& connection, std::int64_t bag) {
    return connection
        .statement("SELECT state, at, joined " THAWSLIP_EVENTS_THAT_COUNT
                   "AND state <> '' " THAWSLIP_LAST)
        .with(bag);
}

/// What is said of a bag now, and the place that its events say.
Statement& said_question(Connection& connection, std::int64_t bag) {
    return connection
        .statement("SELECT state, changed, joined, place, (SELECT place " THAWSLIP_EVENTS_THAT_COUNT
                   "AND place IS NOT NULL " THAWSLIP_LAST ") FROM bag WHERE id = ?1")
        .with(bag);
}

using Where = std::optional<std::string>;

/// A bag whose state is being found.
struct Finding {
    std::int64_t bag = 0;
    std::optional<Known> known;
    Known said;
    Where place_known;
    Where place_said;

    bool is_new_state() const {
        return known && std::tie(known->state, known->changed, known->joined) !=
                            std::tie(said.state, said.changed, said.joined);
    }
};

Finding finding_of(Connection& connection, std::int64_t bag) {
    const auto place_in = [](const Statement& row, int column) {
        return row.is_nothing(column) ? Where{} : Where{row.text(column)};
    };
    Finding finding{bag, known_at(known_question(connection, bag)), {}, {}, {}};
    if (auto& said = said_question(connection, bag); said.next()) {
        finding.said = {said.text(0), said.text(1), said.text(2)};
        finding.place_said = place_in(said, 3);
        finding.place_known = place_in(said, 4);
    }
    return finding;
}

/// What holds where a bag's last event renames it.
void follow_name(Connection& connection, Finding& finding) {
    const auto& known = finding.known;
    if (known && !known->joined.empty() &&
        !leads_elsewhere(connection, finding.bag, known->joined)) {
        // Left out of a merge, or renamed there and back by two: better listed twice than lost.
        finding.known =
            known_at(connection
                         .statement("SELECT state, at, joined " THAWSLIP_EVENTS_THAT_COUNT
                                    "AND state NOT IN ('', 'renamed') " THAWSLIP_LAST)
                         .with(finding.bag));
    }
}

void put_state(Connection& connection, const Finding& finding) {
    const auto& state = finding.known ? *finding.known : finding.said;
    auto& update = connection
                       .statement("UPDATE bag SET state = ?, changed = ?, joined = ?, place = ? "
                                  "WHERE id = ?")
                       .with(state.state)
                       .with(state.changed)
                       .with(state.joined);
    (finding.place_known ? update.with(*finding.place_known) : update.with_nothing())
        .with(finding.bag)
        .run();
}

} // namespace

bool add_event(Connection& connection, std::int64_t bag, const BagChange& change,
               const std::string& at, const Station& station, std::int64_t seq) {
    auto event = event_of_now(at, station, seq);
    if (const auto last = last_moment(connection, bag)) { // after all that is known of the bag
        event.ordered = std::max(event.ordered, std::min(*last, Most::ordered - 1) + 1);
    }
    event.state = change.state;
    event.place = change.place;
    event.joined = change.joined;
    event.undoes = change.undoes;
    insert_event(connection, bag, event);
    return find_state(connection, bag);
}

std::int64_t insert_first_bag(Connection& connection, std::int64_t package, int number,
                              const FirstMoment& first) {
    auto event = event_of_now(first.at, first.station, first.seq);
    event.state = first.state;
    const auto bag = insert_bag(connection, package, number, first.state, first.at);
    insert_event(connection, bag, event);
    return bag;
}

std::set<std::int64_t> find_states(Connection& connection, std::span<const std::int64_t> bags) {
    for (const auto bag : bags) {
        known_question(connection, bag).ahead();
        said_question(connection, bag).ahead();
    }
    std::vector<Finding> findings;
    for (const auto bag : bags) {
        findings.push_back(finding_of(connection, bag));
    }
    std::set<std::int64_t> changed;
    for (auto& finding : findings) {
        follow_name(connection, finding);
        if (finding.is_new_state()) {
            changed.insert(finding.bag);
        }
        if (finding.is_new_state() || finding.place_known != finding.place_said) {
            put_state(connection, finding);
        }
    }
    return changed;
}

bool find_state(Connection& connection, std::int64_t bag) {
    return !find_states(connection, {&bag, 1}).empty();
}

// A literal, so that each whole statement is one too.
#define THAWSLIP_EVENT_COLUMNS                                                                     \
    "SELECT ordered, station, seq, state, at, clock, clock_offset, boot, uptime, place, joined, "  \
    "undoes, bag FROM bag_event "

BagEvent event_at(const Statement& row) {
    return {row.integer(0), row.text(1),
            row.integer(2), state_of(row.text(3)),
            row.text(4),    row.integer(5),
            row.integer(6), row.text(7),
            row.integer(8), row.is_nothing(9) ? std::nullopt : std::optional{row.text(9)},
            row.text(10),   row.integer(11)};
}

std::vector<BagEvent> events_of(Connection& connection, std::int64_t bag) {
    auto& rows = connection
                     .statement(THAWSLIP_EVENT_COLUMNS
                                "WHERE bag = ? ORDER BY ordered, station, seq, state, at")
                     .with(bag);
    std::vector<BagEvent> events;
    while (rows.next()) {
        events.push_back(event_at(rows));
    }
    return events;
}

std::unordered_map<std::int64_t, std::vector<BagEvent>> by_bag(Statement& rows) {
    std::unordered_map<std::int64_t, std::vector<BagEvent>> events;
    while (rows.next()) {
        events[rows.integer(12)].push_back(event_at(rows));
    }
    return events;
}

std::unordered_map<std::int64_t, std::vector<BagEvent>> events_by_bag(Connection& connection) {
    return by_bag(connection.statement(THAWSLIP_EVENT_COLUMNS
                                       "ORDER BY bag, ordered, station, seq, state, at"));
}

namespace {

Statement& events_question(Connection& connection, int lineage) {
    return connection
        .statement(THAWSLIP_EVENT_COLUMNS
                   "WHERE bag IN (SELECT b.id FROM bag b JOIN package p ON p.id = b.package JOIN "
                   "day d ON d.id = p.day WHERE d.lineage = ?) ORDER BY bag, ordered, station, "
                   "seq, state, at")
        .with(lineage);
}

} // namespace

std::unordered_map<std::int64_t, std::vector<BagEvent>> events_of_lineage(Connection& connection,
                                                                          int lineage) {
    return by_bag(events_question(connection, lineage));
}

void ask_events_ahead(Connection& connection, int lineage) {
    events_question(connection, lineage).ahead();
}

bool says_state_alone(const BagEvent& event) {
    return event.state && *event.state != State::Renamed && event.joined.empty() &&
           event.undoes == 0;
}

/// Whether an event says something of the bag that is not so yet.
bool says_something_new(Connection& connection, std::int64_t bag, const BagChange& change) {
    auto& row =
        connection
            .statement("SELECT b.state, coalesce(b.place, p.place) FROM bag b JOIN package p ON "
                       "p.id = b.package WHERE b.id = ?")
            .with(bag);
    return row.next() && ((change.state && row.text(0) != word_of(*change.state)) ||
                          (change.place && row.text(1) != *change.place));
}

int Archive::note(std::span<const std::string> ids, const BagChange& change, const std::string& at,
                  const Station& station) {
    const Question question{*connection_};
    Transaction transaction{*connection_};
    const auto seq = next_seq(*connection_, station.name);
    int noted = 0;
    for (const auto& id : ids) {
        const auto bag = living_bag(*connection_, id);
        if (bag != 0 && says_something_new(*connection_, bag, change)) {
            const bool is_in_it = add_event(*connection_, bag, change, at, station, seq);
            noted += is_in_it || !change.state ? 1 : 0;
        }
    }
    transaction.commit();
    return noted;
}

} // namespace thawslip::archive
