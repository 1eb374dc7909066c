#pragma once

#include "archive/contents.h"
#include "kitchen/bag_id.h"
#include "support/random.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>
#include <string>

namespace thawslip::test_support {

/// Makes what an archive can hold, and worse than any kitchen will write.
class RandomArchive {
public:
    explicit RandomArchive(std::uint64_t seed) : random_{seed} {}

    archive::Contents make() {
        archive::Contents contents;
        const auto lineages = random_.below(5);
        for (std::size_t lineage = 1; lineage <= lineages; ++lineage) {
            const auto revisions = 1 + random_.below(3);
            for (std::size_t revision = 1; revision <= revisions; ++revision) {
                add_day(contents, static_cast<int>(lineage), static_cast<int>(revision));
            }
        }
        const auto prints = contents.days.empty() ? 0 : random_.below(6);
        for (std::size_t i = 0; i < prints; ++i) {
            add_print(contents, static_cast<int>(i));
        }
        return contents;
    }

private:
    /// A line for people: letters of many scripts, and what TOML and shells take for their own.
    std::string line() {
        static const char* const parts[] = {
            "stew",    " ",        "\"",       "\\",       "'",     "#",
            "½ cup",   "чечевица", "カボチャ", "=",        "[[x]]", "\xF0\x9F\x8D\xB2",
            "\\u0041", "'''",      "\"\"\"",   "\xC2\xA0", ","};
        std::string text;
        for (auto n = random_.below(6); n > 0; --n) {
            text += parts[random_.below(std::size(parts))];
        }
        return text;
    }

    /// Anything at all.
    std::string bytes() {
        std::string text;
        for (auto n = random_.below(40); n > 0; --n) {
            text += static_cast<char>(random_.below(256));
        }
        return text;
    }

    /// A text of several lines with line ends of every kind.
    std::string text() {
        static const char* const ends[] = {"\n", "\r\n", "\r", "\t", "\n\n", "\x7F", "\x01"};
        std::string all = random_.chance(4) ? "\n" : "";
        for (auto n = random_.below(6); n > 0; --n) {
            all += line() + ends[random_.below(std::size(ends))];
        }
        return random_.chance(8) ? all + std::string(1, '\0') : all;
    }

    std::string moment() {
        return fmt::format("20{:02}-{:02}-{:02}T{:02}:00:00", random_.below(100),
                           1 + random_.below(12), 1 + random_.below(28), random_.below(24));
    }

    kitchen::Date day() {
        return std::chrono::year{1990 + static_cast<int>(random_.below(200))} /
               std::chrono::month{static_cast<unsigned>(1 + random_.below(12))} /
               static_cast<int>(1 + random_.below(28));
    }

    std::vector<std::string> lines() {
        std::vector<std::string> all;
        for (auto n = random_.below(3); n > 0; --n) {
            all.push_back(line());
        }
        return all;
    }

    archive::PackageRecord package() {
        archive::PackageRecord record;
        record.dish = "Dish " + line();
        record.words = line();
        record.made = day();
        record.keep_until = day();
        record.basis =
            random_.chance(2) ? kitchen::DateBasis::SetByCook : kitchen::DateBasis::StorageTable;
        record.servings = static_cast<int>(1 + random_.below(100));
        if (random_.chance(2)) {
            record.weight = kitchen::Mass{random_.between(1.0, 20'000.0)};
        }
        record.place = random_.chance(3) ? line() : "";
        if (random_.chance(2)) {
            record.food = archive::FoodRecord{lines(), lines()};
        }
        if (random_.chance(2)) {
            record.thaw = archive::ThawRecord{archive::thaw_words[random_.below(4)].first, {}};
            if (random_.chance(2)) {
                record.thaw->lead = std::chrono::minutes{random_.below(10'000)};
            }
        }
        return record;
    }

    void add_day(archive::Contents& contents, int lineage, int revision) {
        archive::Contents::Day added{
            lineage,
            revision,
            moment(),
            revision * 1000 + static_cast<std::int64_t>(random_.below(1000)),
            {day(), line(), line(), random_.chance(2) ? text() : bytes(), {}, line()}};
        if (random_.chance(3)) {
            added.record.file = "/orchard/" + bytes(); // a file's name need be no UTF-8
        }
        for (auto packages = random_.below(4); packages > 0; --packages) {
            auto record = package();
            record.bags.resize(1 + random_.below(3));
            record.batch = {static_cast<int>(random_.below(32'768)), line(),
                            1 + static_cast<std::int64_t>(random_.next() >> 24U)};
            record.origin = fmt::format("{:x}", random_.next());
            const int position = static_cast<int>(added.record.packages.size()) + 1;
            for (int number = 1; number <= static_cast<int>(record.bags.size()); ++number) {
                if (!random_.chance(4)) { // some are described by another revision
                    add_bag(contents, record.made, position, number);
                }
            }
            added.record.packages.push_back(std::move(record));
        }
        contents.days.push_back(std::move(added));
    }

    void add_bag(archive::Contents& contents, kitchen::Date made, int position, int number) {
        archive::Contents::Bag bag;
        bag.day = contents.days.size();
        bag.position = position;
        bag.number = number;
        for (auto ids = 1 + random_.below(2); ids > 0; --ids) {
            bag.ids.push_back(kitchen::fresh_bag_id(
                {fmt::format("dish {}", random_.next()), made, number}, taken_));
        }
        for (auto events = 1 + random_.below(3); events > 0; --events) {
            bag.events.push_back({static_cast<std::int64_t>(random_.next() >> 21U), line(),
                                  static_cast<std::int64_t>(random_.below(100)),
                                  archive::state_words[random_.below(5)].first, moment(),
                                  static_cast<std::int64_t>(random_.below(2'000'000'000)),
                                  static_cast<std::int64_t>(random_.below(200)) - 100, line(),
                                  static_cast<std::int64_t>(random_.below(1'000'000))});
        }
        for (auto& event : bag.events) {
            if (random_.chance(4)) {
                event.place = line();
            }
            event.undoes = random_.chance(5) ? static_cast<std::int64_t>(random_.below(100)) : 0;
        }
        for (std::size_t i = 1; i < bag.events.size(); ++i) {
            if (random_.chance(4)) {
                bag.events[i].state.reset();
            }
        }
        std::ranges::sort(bag.events);
        contents.bags.push_back(std::move(bag));
    }

    void add_print(archive::Contents& contents, int index) {
        archive::Contents::Print print{moment(),
                                       moment(),
                                       {fmt::format("labels {}", index),
                                        random_.chance(3) ? bytes() : line(), line(), text(),
                                        text()},
                                       {},
                                       {}};
        for (auto times = random_.below(3); times > 0; --times) {
            print.keys.push_back({fmt::format("{} {}", index, times), moment(), line()});
        }
        std::ranges::sort(print.keys, {}, &archive::Contents::Key::key);
        for (auto files = random_.below(3); files > 0; --files) {
            print.setup.files.push_back(
                {fmt::format("/orchard/{}{}.toml", files, bytes()), bytes()});
        }
        for (auto days = 1 + random_.below(2); days > 0; --days) {
            print.days.push_back(random_.below(contents.days.size()));
        }
        contents.prints.push_back(std::move(print));
    }

    test_support::Random random_;
    std::set<std::string> taken_;
};

} // namespace thawslip::test_support
