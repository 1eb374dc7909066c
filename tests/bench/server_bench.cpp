// What a server that many kitchens share is asked for, by the program's own code: every statement,
// its role and its policies are those of src/archive. tests/bench/server starts the server.
#include "archive/exchange.h"
#include "archive/server_sql.h"
#include "kitchen/bag_id.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <charconv>
#include <ctime>
#include <fmt/format.h>
#include <fstream>
#include <functional>
#include <random>
#include <string>
#include <thread>
#include <unistd.h>

using namespace thawslip;
using namespace thawslip::archive;

namespace {

using Clock = std::chrono::steady_clock;
constexpr std::array dishes{"Squash and red lentil stew", "Apple and sage pork",
                            "Chestnut and kale soup", "Bean and barley pot",
                            "Plum and ginger compote"};
constexpr int bags_of_dish = 20;

std::string moment(kitchen::Date day, int second) {
    return fmt::format("{}T{:02}:{:02}:{:02}", kitchen::to_iso(day), 8 + second / 3600,
                       second / 60 % 60, second % 60);
}

/// A packing day of some dishes, 20 bags each, as its description would be planned.
DayRecord packed(const std::string& name, kitchen::Date made, int count) {
    DayRecord day{made, "Orchard house", fmt::format("/orchard/{}.toml", name), {}, {}, "station"};
    day.description = fmt::format("[day]\nmade = {}\n", kitchen::to_iso(made));
    const auto keep_until = kitchen::add_months(made, std::chrono::months{3});
    for (int d = 0; d < count; ++d) {
        const auto dish = fmt::format("{} {} {}", dishes[static_cast<std::size_t>(d) % 5], name, d);
        day.description += fmt::format("[[package]]\ndish = \"{}\"\nservings = 6\nbags = {}\n"
                                       "weight = \"2 kg\"\ncontains = [\"celery\"]\n"
                                       "food = \"soup or stew\"\n"
                                       "[[package.finish]]\nadd = \"1 l vegetable stock\"\n",
                                       dish, bags_of_dish);
        PackageRecord package{dish,
                              dish,
                              made,
                              keep_until,
                              kitchen::DateBasis::SetByCook,
                              6,
                              kitchen::Mass{2000.0},
                              FoodRecord{{"celery"}, {"soup or stew"}},
                              ThawRecord{kitchen::ThawMethod::Refrigerator, std::chrono::hours{22}},
                              {}};
        std::ranges::transform(package.words, package.words.begin(),
                               [](char c) { return c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c; });
        for (int bag = 1; bag <= bags_of_dish; ++bag) {
            package.bags.push_back(kitchen::bag_id({dish, made, bag}));
        }
        day.packages.push_back(std::move(package));
    }
    return day;
}

BagEvent event(kitchen::Date day, int second, std::int64_t seq, State state) {
    BagEvent one;
    const auto seconds = std::chrono::sys_days{day}.time_since_epoch().count() * 86'400LL + second;
    one.ordered = seconds * 1000;
    one.clock = seconds;
    one.station = fmt::format("station {}", seq % 4);
    one.seq = seq;
    one.state = state;
    one.at = moment(day, second);
    return one;
}

/// What a kitchen has after some years: days of 100 bags, a few hundred of the last still frozen,
/// the others eaten by fours.
Contents years(int bags) {
    using namespace std::chrono;
    constexpr int dishes_of_day = 5;
    constexpr int frozen = 300;
    Contents contents;
    std::int64_t seq = 0;
    for (int number = 0; static_cast<int>(contents.bags.size()) < bags; ++number) {
        const kitchen::Date made{sys_days{2022y / January / 1} + days{number * 17}};
        auto record = packed(fmt::format("day {}", number), made, dishes_of_day);
        const auto print = ++seq;
        for (int position = 1; position <= dishes_of_day; ++position) {
            auto& package = record.packages[static_cast<std::size_t>(position - 1)];
            package.origin = fmt::format("{:016x}", kitchen::fnv_1a(package.dish));
            for (int n = 1; n <= bags_of_dish; ++n) {
                auto& id = package.bags[static_cast<std::size_t>(n - 1)];
                Contents::Bag bag{{std::move(id)}, contents.days.size(), position, n, {}};
                id.clear();
                bag.events.push_back(event(made, 21'600, print, State::Frozen));
                if (static_cast<int>(contents.bags.size()) < bags - frozen) {
                    seq += n % 4 == 1 ? 1 : 0;
                    const kitchen::Date eaten{sys_days{made} + days{n}};
                    bag.events.push_back(event(eaten, 36'000, seq, State::Eaten));
                }
                contents.bags.push_back(std::move(bag));
            }
        }
        const auto at = moment(made, 21'600);
        contents.prints.push_back({at,
                                   at,
                                   {"labels", "letter-2x5-4x2in", "", "first_cell = 1\n", "x 1\n"},
                                   {contents.days.size()},
                                   {{fmt::format("key {}", number), at, "station 1"}}});
        contents.days.push_back({number + 1, 1, at, number + 1, std::move(record)});
    }
    return contents;
}

Archive opened(const std::string& place, Mode mode = Mode::Write) {
    auto archive = Archive::open(place, mode, std::chrono::seconds{60});
    if (!archive) {
        fmt::print(stderr, "{}\n", archive.fault().message);
        std::exit(1);
    }
    return std::move(archive).value();
}

/// One that asks: with kitchens of its own choice, each in a session that stays open.
struct Client {
    std::mt19937 random;
    std::vector<Archive> sessions;
    std::vector<std::vector<Bag>> known; ///< frozen bags of each session's kitchen
    std::string kitchens;                ///< an address without the kitchen's number
    int kitchen_count = 1;
    int number = 0;
    int made = 0; ///< days so far

    std::size_t one() { return random() % sessions.size(); }
    const Bag& bag_of(std::size_t session) {
        return known[session][random() % known[session].size()];
    }
    std::string any_kitchen() {
        return fmt::format("{}{}", kitchens, 1 + random() % static_cast<unsigned>(kitchen_count));
    }
};

Client client_of(const std::string& kitchens, int kitchen_count, int sessions, int number) {
    Client client{std::mt19937{static_cast<unsigned>(number * 7919 + 18)},
                  {},
                  {},
                  kitchens,
                  kitchen_count,
                  number};
    for (int i = 0; i < sessions; ++i) {
        client.sessions.push_back(opened(client.any_kitchen()));
        client.known.push_back(client.sessions.back().bags(Which::InFreezer));
    }
    return client;
}

PrintRecord new_print(Client& client) {
    using namespace std::chrono;
    const auto name = fmt::format("{} {} {}", ::getpid(), client.number, client.made++);
    // Each on a day of its own: ids of one day are the same sooner or later (kitchen/bag_id.h).
    const kitchen::Date made{sys_days{2026y / October / 17} + days{client.random() % 2000}};
    return {moment(made, client.made),
            {"labels", "letter-2x5-4x2in", "", "", ""},
            {packed(name, made, 10)},
            {fmt::format("station {}", client.number)}};
}

/// A print of 200 new bags. A station settles first which batches they are, for it numbers its own.
void record_print(Client& client) {
    auto& archive = client.sessions[client.one()];
    auto print = new_print(client);
    auto& day = print.days[0];
    day.station = print.station.name;
    const auto settled = archive.link() ? archive.settle(day, {}) : Settled{};
    for (std::size_t p = 0; p < settled.batches.size(); ++p) {
        auto& package = day.packages[p];
        package.batch = settled.batches[p];
        for (std::size_t n = 0; n < package.bags.size(); ++n) {
            package.bags[n] = kitchen::bag_id(
                {package.dish, package.made, static_cast<int>(n) + 1, package.batch});
        }
    }
    archive.record(print);
}

struct Question {
    const char* name;
    std::function<void(Client&)> ask;
};

/// What the program asks, of any kitchen.
const std::vector<Question>& questions() {
    static const std::vector<Question> all = {
        {"list of 300", [](Client& c) { c.sessions[c.one()].bags(Which::InFreezer); }},
        {"by id",
         [](Client& c) {
             const auto at = c.one();
             c.sessions[at].bag(c.bag_of(at).id);
         }},
        {"find", [](Client& c) { c.sessions[c.one()].find("sage por", Which::InFreezer); }},
        {"find of all", [](Client& c) { c.sessions[c.one()].find("sage day 4", Which::All); }},
        // service::freezer_next reads the list, and the days of the dishes that it proposes.
        {"next",
         [](Client& c) {
             auto& archive = c.sessions[c.one()];
             std::vector<DayKey> days;
             for (const auto& bag : archive.bags(Which::InFreezer)) {
                 if (days.size() < 5 && std::ranges::find(days, bag.day) == days.end()) {
                     days.push_back(bag.day);
                     archive.day(bag.day);
                     archive.newest_setup(bag.day);
                 }
             }
         }},
        {"history",
         [](Client& c) {
             const auto at = c.one();
             c.sessions[at].history(c.bag_of(at).id);
         }},
        {"slips of an id", [](Client& c) { c.sessions[c.one()].near_ids("K7Q2M49XD"); }},
        {"days printed", [](Client& c) { c.sessions[c.one()].days_printed(); }},
        {"prints of a day",
         [](Client& c) {
             const auto at = c.one();
             c.sessions[at].prints_on(c.bag_of(at).made);
         }},
        {"note one bag",
         [](Client& c) {
             const auto at = c.one();
             const std::vector<std::string> ids{c.bag_of(at).id};
             const auto state = c.random() % 2 == 0 ? State::Out : State::Frozen;
             c.sessions[at].set_state(ids, state, "2026-10-18T10:00:00",
                                      {fmt::format("station {}", c.number)});
         }},
        {"record 200 bags", [](Client& c) { record_print(c); }},
        {"connect", [](Client& c) { opened(c.any_kitchen()); }},
    };
    return all;
}

using Times = std::vector<double>; // milliseconds

/// How it is measured: of how many kitchens, how long each question, at which server.
struct Run {
    std::string kitchens; ///< an address without the kitchen's number
    int kitchen_count = 1;
    std::chrono::seconds length{1};
    std::string server; ///< the number of its first process
    int sessions = 1;   ///< that each client has open at once
    std::string alone;  ///< the one question that is asked; empty: all
};

Times asked(Client& client, const std::function<void(Client&)>& ask, std::chrono::seconds length) {
    Times times;
    const auto end = Clock::now() + length;
    for (auto start = Clock::now(); start < end; start = Clock::now()) {
        ask(client);
        times.push_back(std::chrono::duration<double, std::milli>(Clock::now() - start).count());
    }
    return times;
}

Times asked_by(std::vector<Client>& clients, const std::function<void(Client&)>& ask,
               std::chrono::seconds length) {
    std::vector<Times> times(clients.size());
    std::vector<std::thread> threads;
    for (std::size_t i = 0; i < clients.size(); ++i) {
        threads.emplace_back([&, i] { times[i] = asked(clients[i], ask, length); });
    }
    Times all;
    for (std::size_t i = 0; i < clients.size(); ++i) {
        threads[i].join();
        all.insert(all.end(), times[i].begin(), times[i].end());
    }
    std::ranges::sort(all);
    return all;
}

std::string shown(const Times& sorted) {
    const auto at = [&sorted](double part) {
        return sorted[static_cast<std::size_t>(part * static_cast<double>(sorted.size() - 1))];
    };
    return fmt::format("{:7.1f} /{:7.1f}", at(0.5), at(0.95));
}

/// Milliseconds of processors so far: what other work on the machine takes is not in them.
struct Processors {
    double clients = 0;
    double server = 0;
    double waited = 0; ///< the server, ready to run, for a processor
};

/// \param server the number of the server's first process, whose children answer
Processors processors(const std::string& server) {
    constexpr double of_second = 1e3;
    constexpr double of_nanosecond = 1e-6;
    Processors used{of_second * static_cast<double>(std::clock()) / CLOCKS_PER_SEC};
    std::ifstream children{fmt::format("/proc/{0}/task/{0}/children", server)};
    for (std::string child; children >> child;) {
        double ran = 0;
        double waited = 0;
        std::ifstream{fmt::format("/proc/{}/schedstat", child)} >> ran >> waited;
        used.server += ran * of_nanosecond;
        used.waited += waited * of_nanosecond;
    }
    return used;
}

void report(const char* name, std::vector<Client>& one, std::vector<Client>& eight,
            const std::function<void(Client&)>& ask, const Run& run) {
    const auto start = processors(run.server);
    const auto alone = asked_by(one, ask, run.length);
    const auto together = asked_by(eight, ask, run.length);
    const auto end = processors(run.server);
    const auto count = static_cast<double>(alone.size() + together.size());
    fmt::print("| {:<34} |{} |{} |{:7.2f} +{:6.2f}, {:6.2f} | ({}, {})\n", name, shown(alone),
               shown(together), (end.server - start.server) / count,
               (end.clients - start.clients) / count, (end.waited - start.waited) / count,
               alone.size(), together.size());
    std::fflush(stdout);
}

std::vector<Client> clients_of(const std::string& kitchens, int kitchen_count, int clients,
                               int sessions) {
    std::vector<Client> all;
    for (int i = 0; i < clients; ++i) {
        all.push_back(client_of(kitchens, kitchen_count, sessions, clients * 100 + i));
    }
    return all;
}

void ask_all(const Run& run) {
    auto one = clients_of(run.kitchens, run.kitchen_count, 1, run.sessions);
    auto eight = clients_of(run.kitchens, run.kitchen_count, 8, run.sessions);
    for (const auto& [name, ask] : questions()) {
        if (run.alone.empty() || run.alone == name) {
            report(name, one, eight, ask, run);
        }
    }
}

/// A computer of a kitchen with its own file, which every command brings together with the server.
class PrintingStation {
public:
    PrintingStation(const std::string& folder, std::string address, int number)
        : address_{std::move(address)}, file_{fmt::format("{}/{}.db", folder, number)} {
        client_.number = number;
        client_.sessions.push_back(opened(file_));
        client_.sessions[0].put_link({address_, {}, 0});
    }

    void exchange() {
        auto server = Archive::reach(address_, std::chrono::minutes{1});
        if (!server) {
            throw ArchiveFailure{server.fault()};
        }
        auto there = std::move(server).value();
        const auto exchanged = archive::exchange(client_.sessions[0], there);
        if (exchanged.unsent) {
            throw ArchiveFailure{*exchanged.unsent};
        }
        client_.known = {client_.sessions[0].bags(Which::InFreezer)};
    }

    Client& client() { return client_; }

private:
    std::string address_;
    std::string file_;
    Client client_;
};

/// Does something at the station's file and then times what follows.
Times exchanged(std::vector<PrintingStation>& stations, const std::function<void(Client&)>& before,
                std::chrono::seconds length) {
    std::vector<Times> times(stations.size());
    std::vector<std::thread> threads;
    for (std::size_t i = 0; i < stations.size(); ++i) {
        threads.emplace_back([&, i] {
            const auto end = Clock::now() + length;
            while (Clock::now() < end || times[i].empty()) {
                before(stations[i].client());
                const auto start = Clock::now();
                stations[i].exchange();
                times[i].push_back(
                    std::chrono::duration<double, std::milli>(Clock::now() - start).count());
            }
        });
    }
    Times all;
    for (std::size_t i = 0; i < stations.size(); ++i) {
        threads[i].join();
        all.insert(all.end(), times[i].begin(), times[i].end());
    }
    std::ranges::sort(all);
    return all;
}

void exchange_all(const Run& run, const std::string& folder) {
    std::vector<PrintingStation> one;
    std::vector<PrintingStation> eight;
    for (int i = 0; i < 9; ++i) {
        auto& which = i == 0 ? one : eight;
        which.emplace_back(
            folder, fmt::format("{}{}", run.kitchens, 1 + (i * 331 + 17) % run.kitchen_count), i);
    }
    const auto work = [](std::size_t question) { return questions()[question].ask; };
    const std::array<std::tuple<const char*, std::function<void(Client&)>, std::chrono::seconds>, 4>
        rows{{{"first fetch by a new station", [](Client&) {}, std::chrono::seconds{0}},
              {"exchange, nothing new", [](Client&) {}, run.length},
              {"exchange, one bag noted", work(9), run.length},
              {"exchange, 200 bags printed", work(10), run.length}}};
    for (const auto& [name, before, time] : rows) {
        const auto alone = exchanged(one, before, time);
        const auto together = exchanged(eight, before, time);
        fmt::print("| {:<34} |{} |{} | ({}, {})\n", name, shown(alone), shown(together),
                   alone.size(), together.size());
        std::fflush(stdout);
    }
}

int number_in(const char* word) {
    int number = 0;
    std::from_chars(word, word + std::char_traits<char>::length(word), number);
    return std::max(number, 1);
}

} // namespace

int main(int count, char** words) {
    const std::vector<std::string> said(words + 1, words + count);
    if (said == std::vector<std::string>{"sql"}) {
        fmt::print("{}", server_sql());
    } else if (said.size() == 3 && said[0] == "fill") { // ADDRESS BAGS
        opened(said[1]).merge(years(number_in(words[3])));
    } else if (said.size() == 2 && said[0] == "once") { // ADDRESS of kitchens: each question once
        auto client = client_of(said[1], 1, 1, 1);
        for (const auto& question : questions()) {
            fmt::print("{}\n", question.name);
            question.ask(client);
        }
    } else if (said.size() == 8 && said[0] == "ask") {
        // ADDRESS KITCHENS SECONDS SERVER SESSIONS QUESTION FOLDER
        const Run run{said[1], number_in(words[3]), std::chrono::seconds{number_in(words[4])},
                      said[4], number_in(words[6]), said[6]};
        ask_all(run);
        if (run.alone.empty()) {
            exchange_all(run, said[7]);
        }
    } else {
        fmt::print(stderr, "how it is used: tests/bench/server\n");
        return 2;
    }
}
