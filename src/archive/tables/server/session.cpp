#include "archive/tables/server/session.h"

#include "archive/tables/server/answers.h"
#include "archive/tables/server/faults.h"
#include "archive/tables/server/libpq.h"
#include "archive/tables/server/sets.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cerrno>
#include <fmt/format.h>
#include <map>
#include <optional>
#include <poll.h>
#include <set>

namespace thawslip::archive {
namespace {

using Clock = std::chrono::steady_clock;

const LibPq& required_libpq(const std::string& place) {
    const auto* functions = libpq();
    if (functions == nullptr) {
        throw ArchiveFailure{{ArchiveFault::Kind::CannotOpen,
                              fmt::format("cannot open the archive {}: this system has no libpq "
                                          "(Debian: apt install libpq5)",
                                          place)}};
    }
    return *functions;
}

struct Finish {
    void operator()(PGconn* connection) const { libpq()->PQfinish(connection); }
};
struct Clear {
    void operator()(PGresult* result) const { libpq()->PQclear(result); }
};
using Connected = std::unique_ptr<PGconn, Finish>;
using Result1 = std::unique_ptr<PGresult, Clear>;

/// Parameters of types that PostgreSQL knows by number (pg_type.dat).
enum Type : Oid {
    Unknown = 0,
    Bool = 16,
    Bytea = 17,
    Int8 = 20,
    Int2 = 21,
    Int4 = 23,
    Text = 25,
    Float4 = 700,
    Float8 = 701,
    ByteaArray = 1001,
    TextArray = 1009,
    Int8Array = 1016,
    Float8Array = 1022
};

struct Sent {
    Oid type = Unknown;
    std::optional<std::string> bytes;
    bool is_binary = false;
};

struct AsSent {
    Sent operator()(std::monostate) const { return {}; }
    Sent operator()(std::int64_t value) const { return {Int8, std::to_string(value)}; }
    Sent operator()(double value) const { return {Float8, fmt::format("{}", value)}; }
    Sent operator()(const std::string& value) const { return {Text, value}; }
    Sent operator()(const Bytes& value) const { return {Bytea, value.bytes, true}; }
    Sent operator()(const Array& value) const {
        constexpr std::array<Oid, 4> types = {Int8Array, Float8Array, TextArray, ByteaArray};
        return {types.at(static_cast<std::size_t>(value.of)), value.written};
    }
};

std::uint64_t big_endian(const char* bytes, int length) {
    std::uint64_t number = 0;
    for (int i = 0; i < length; ++i) {
        number = number << 8U | static_cast<unsigned char>(bytes[i]);
    }
    return number;
}

/// A column of an answer in PostgreSQL's binary format: numbers in network order.
Value value_of(Oid type, const char* bytes, int length) {
    const auto number = [&] { return big_endian(bytes, length); };
    switch (type) {
    case Bool: return static_cast<std::int64_t>(number());
    case Int2: return std::int64_t{static_cast<std::int16_t>(number())};
    case Int4: return std::int64_t{static_cast<std::int32_t>(number())};
    case Int8: return static_cast<std::int64_t>(number());
    case Float4:
        return static_cast<double>(std::bit_cast<float>(static_cast<std::uint32_t>(number())));
    case Float8: return std::bit_cast<double>(number());
    default: return std::string_view{bytes, static_cast<std::size_t>(length)};
    }
}

/// What an address leaves open. From one machine to another only a server whose certificate is
/// known is spoken to: with less, whoever stands between is trusted (PostgreSQL 15, 34.19.1).
std::map<std::string, std::string> presets(const std::string& host) {
    const bool is_here = host.empty() || host.starts_with('/') || host == "localhost" ||
                         host == "127.0.0.1" || host == "::1";
    return {{"sslmode", is_here ? "prefer" : "verify-full"},
            {"client_encoding", "UTF8"},
            {"application_name", "thawslip"},
            {"options", " "}, // else PGOPTIONS would have a say
            {"tcp_user_timeout", "5000"},
            {"keepalives_idle", "3"},
            {"keepalives_interval", "2"},
            {"keepalives_count", "2"}};
}

} // namespace

struct Session::Wire {
    Wire(const Address& address, const Deadline& wanted)
        : place{address.shown}, deadline{wanted}, pq{required_libpq(place)} {
        start(address);
        reach();
        pq.PQsetnonblocking(connection.get(), 1);
        pq.PQenterPipelineMode(connection.get());
    }

    [[noreturn]] void fail(ArchiveFault fault) {
        connection.reset();
        throw ArchiveFailure{std::move(fault)};
    }

    void start(const Address& address) {
        char* wrong = nullptr;
        auto* options = pq.PQconninfoParse(address.uri.c_str(), &wrong);
        if (options == nullptr) {
            std::string words = wrong != nullptr ? wrong : "it cannot be read";
            pq.PQfreemem(wrong);
            fail({ArchiveFault::Kind::CannotOpen,
                  fmt::format("cannot open the archive {}: {}", place,
                              words.substr(0, words.find('\n')))});
        }
        std::map<std::string, std::string> settings;
        for (auto* one = options; one->keyword != nullptr; ++one) {
            if (one->val != nullptr) {
                settings[one->keyword] = one->val;
            }
        }
        pq.PQconninfoFree(options);
        settings.merge(presets(settings["host"]));
        std::vector<const char*> keys;
        std::vector<const char*> values;
        for (const auto& [name, value] : settings) {
            keys.push_back(name.c_str());
            values.push_back(value.c_str());
        }
        keys.push_back(nullptr);
        values.push_back(nullptr);
        connection.reset(pq.PQconnectStartParams(keys.data(), values.data(), 0));
        pq.PQsetNoticeProcessor(
            connection.get(), [](void*, const char*) {}, nullptr);
    }

    void reach() {
        const auto end = std::min(Clock::now() + deadline.connect, deadline.end);
        auto state = PGRES_POLLING_WRITING; // PostgreSQL 15, 34.1, PQconnectStartParams
        while (state != PGRES_POLLING_OK) {
            if (state == PGRES_POLLING_FAILED || pq.PQstatus(connection.get()) == CONNECTION_BAD) {
                fail(connection_fault(place, pq.PQerrorMessage(connection.get())));
            }
            wait(state == PGRES_POLLING_READING ? POLLIN : POLLOUT, end);
            state = pq.PQconnectPoll(connection.get());
        }
    }

    void wait(int events, Clock::time_point end) {
        pollfd one{pq.PQsocket(connection.get()), static_cast<short>(events), 0};
        for (;;) {
            const auto left =
                std::chrono::duration_cast<std::chrono::milliseconds>(end - Clock::now()).count();
            const int ready =
                left <= 0 ? 0
                          : ::poll(&one, 1, static_cast<int>(std::min<long long>(left, 60'000)));
            if (ready > 0) {
                return;
            }
            if (left <= 0) {
                fail(away(place, "it did not answer in time"));
            }
            if (ready < 0 && errno != EINTR) {
                fail(away(place, "the network failed"));
            }
        }
    }

    void require_open() {
        if (!connection) {
            throw ArchiveFailure{away(place, "the connection was lost")};
        }
    }

    void require_sent(int sent) {
        if (sent != 1) {
            fail(away(place, pq.PQerrorMessage(connection.get())));
        }
    }

    void send(const Posted& statement) {
        const auto& [sql, parameters, is_question] = statement;
        require_open();
        std::vector<Sent> sent;
        std::vector<Oid> types;
        std::vector<const char*> values;
        std::vector<int> lengths;
        std::vector<int> formats;
        for (const auto& parameter : parameters) {
            sent.push_back(std::visit(AsSent{}, parameter));
        }
        for (const auto& one : sent) {
            types.push_back(one.type);
            values.push_back(one.bytes ? one.bytes->c_str() : nullptr);
            lengths.push_back(one.bytes ? static_cast<int>(one.bytes->size()) : 0);
            formats.push_back(one.is_binary ? 1 : 0);
        }
        const auto count = static_cast<int>(sent.size());
        const auto [known, is_new] = prepared.try_emplace(sql, fmt::format("t{}", names));
        if (is_new) {
            ++names;
            require_sent(pq.PQsendPrepare(connection.get(), known->second.c_str(), sql.c_str(),
                                          count, types.data()));
            expected.emplace_back();
        }
        require_sent(pq.PQsendQueryPrepared(connection.get(), known->second.c_str(), count,
                                            values.data(), lengths.data(), formats.data(), 1));
        expected.push_back(is_question ? statement : Posted{});
    }

    void send_posted() {
        coming.clear();
        for (const auto& one : in_sets(std::exchange(posted, {}))) {
            send(one);
        }
    }

    /// The next result; nothing at the end of a statement's.
    Result1 next_result(Clock::time_point end) {
        while (pq.PQisBusy(connection.get()) != 0) {
            const int left = pq.PQflush(connection.get());
            require_sent(left < 0 ? 0 : 1);
            wait(left == 1 ? POLLIN | POLLOUT : POLLIN, end);
            require_sent(pq.PQconsumeInput(connection.get()));
        }
        return Result1{pq.PQgetResult(connection.get())};
    }

    /// What the server sends by itself comes between statements (PostgreSQL 15, 34.9).
    bool hears(std::chrono::milliseconds patience) {
        require_open();
        pollfd one{pq.PQsocket(connection.get()), POLLIN, 0};
        if (::poll(&one, 1, static_cast<int>(patience.count())) > 0) {
            require_sent(pq.PQconsumeInput(connection.get()));
        }
        bool any = false;
        while (auto* notified = pq.PQnotifies(connection.get())) {
            pq.PQfreemem(notified);
            any = true;
        }
        return any;
    }

    std::string field(const PGresult& result, int code) const {
        const char* text = pq.PQresultErrorField(&result, code);
        return text != nullptr ? text : "";
    }

    /// Reads to the end of what was sent. \returns the last statement's rows
    Rows receive() {
        const auto end = std::min(Clock::now() + deadline.answer, deadline.end);
        require_sent(pq.PQpipelineSync(connection.get()));
        require_sent(pq.PQflush(connection.get()) < 0 ? 0 : 1);
        std::optional<ArchiveFault> fault;
        Rows rows;
        for (auto& one : std::exchange(expected, {})) {
            while (auto result = next_result(end)) {
                take(std::move(result), rows, fault);
            }
            if (one.is_question) {
                answers.put({std::move(one.sql), std::move(one.parameters)},
                            std::exchange(rows, {}));
            }
        }
        while (auto sync = next_result(end)) {
            if (pq.PQresultStatus(sync.get()) == PGRES_PIPELINE_SYNC) {
                break;
            }
            take(std::move(sync), rows, fault);
        }
        if (fault) {
            prepared.clear(); // which of them the server has by now is not known for sure
            answers.clear();
            throw ArchiveFailure{*std::move(fault)};
        }
        return rows;
    }

    void take(Result1 result, Rows& rows, std::optional<ArchiveFault>& fault) {
        const auto status = pq.PQresultStatus(result.get());
        if (status == PGRES_TUPLES_OK) {
            rows = rows_of(std::move(result));
        } else if (status == PGRES_COMMAND_OK) {
            const std::string_view done = pq.PQcmdStatus(result.get());
            rows = {std::move(result), 1, {done}};
        } else if (status != PGRES_PIPELINE_ABORTED && !fault) { // the first that failed says why
            const auto words = field(*result, PG_DIAG_MESSAGE_PRIMARY);
            fault = server_fault(field(*result, PG_DIAG_SQLSTATE), place,
                                 words.empty() ? pq.PQerrorMessage(connection.get()) : words);
        }
    }

    Rows rows_of(Result1 result) const {
        const auto* sent = result.get();
        const int columns = pq.PQnfields(sent);
        const int count = pq.PQntuples(sent);
        Rows rows{std::move(result), static_cast<std::size_t>(columns), {}};
        rows.values.reserve(rows.columns * static_cast<std::size_t>(count));
        for (int i = 0; i < count; ++i) {
            for (int c = 0; c < columns; ++c) {
                rows.values.push_back(pq.PQgetisnull(sent, i, c) != 0
                                          ? Value{}
                                          : value_of(pq.PQftype(sent, c), pq.PQgetvalue(sent, i, c),
                                                     pq.PQgetlength(sent, i, c)));
            }
        }
        return rows;
    }

    /// What was asked ahead and is about what a statement changes has to be asked again.
    void change(const std::string& sql) {
        answers.forget_changed(sql);
        if (!coming.empty()) {
            std::erase_if(posted, [&sql](const Posted& one) {
                return one.is_question && is_about(one.sql, sql);
            });
            std::erase_if(coming, [&sql](const Asked& one) { return is_about(one.first, sql); });
        }
    }

    std::string place;
    Deadline deadline;
    const LibPq& pq;
    Connected connection;
    std::map<std::string, std::string> prepared; ///< SQL → its name at the server
    std::vector<Posted> posted;
    std::vector<Posted> expected; ///< results of what was sent, and of which question each is
    Answers answers;
    std::set<Asked> coming; ///< questions in `posted`
    int names = 0;          ///< given so far
};

Session::Session(const Address& address, const Deadline& deadline)
    : wire_{std::make_unique<Wire>(address, deadline)} {}

Session::~Session() = default;

Rows Session::ask(const std::string& sql, std::span<const Parameter> parameters) {
    const Asked asked{sql, {parameters.begin(), parameters.end()}};
    wire_->change(sql);
    if (auto known = wire_->answers.take(asked)) {
        return *std::move(known);
    }
    const bool is_coming = wire_->coming.contains(asked);
    wire_->send_posted();
    if (!is_coming) {
        wire_->send({asked.first, asked.second});
        return wire_->receive();
    }
    wire_->receive();
    return wire_->answers.take(asked).value_or(Rows{});
}

void Session::ahead(const std::string& sql, std::span<const Parameter> parameters) {
    Asked asked{sql, {parameters.begin(), parameters.end()}};
    if (!wire_->answers.has(asked) && wire_->coming.insert(asked).second) {
        wire_->posted.push_back({std::move(asked.first), std::move(asked.second), true});
    }
}

void Session::post(const std::string& sql, std::span<const Parameter> parameters) {
    wire_->change(sql);
    wire_->posted.push_back({sql, {parameters.begin(), parameters.end()}});
}

void Session::forget_posted() {
    wire_->posted.clear();
    wire_->coming.clear();
    wire_->answers.clear();
}

void Session::forget_answers() {
    wire_->answers.clear();
    wire_->coming.clear();
    std::erase_if(wire_->posted, [](const Posted& one) { return one.is_question; });
}

bool Session::hears(std::chrono::milliseconds patience) {
    return wire_->hears(patience);
}

const std::string& Session::place() const {
    return wire_->place;
}

} // namespace thawslip::archive
