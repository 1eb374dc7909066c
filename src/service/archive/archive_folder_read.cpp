#include "archive/limits.h"
#include "base/letters.h"
#include "base/list.h"
#include "service/archive/archive_folder.h"
#include "service/archive/toml_text.h"
#include "toml/file_table.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <map>

namespace thawslip::service {
namespace {

using archive::Contents;

constexpr std::size_t most = 10'000'000;                          // of anything that is counted
constexpr std::int64_t most_of_a_number = std::int64_t{1} << 53U; // what every reader of TOML takes

/// The folder that is being read, and all that was found wrong with it.
class Folder {
public:
    Folder(std::string name, const ReadArchiveFile& read) : name_{std::move(name)}, read_{&read} {}

    std::string bytes(const std::string& name) {
        auto text = (*read_)(name);
        if (!text) {
            wrong_.add_in_order({text.fault()}, {});
            return {};
        }
        return std::move(text).value();
    }

    /// Reads a file with `read`, which is given its root table.
    template <class Read>
    void table(const std::string& name, const Read& read) {
        Diagnostics faults;
        const auto document =
            toml::parse(bytes(name), name_ + "/" + name, faults, {largest_archive_file, 32});
        if (wrong_.all().empty() && document.well_formed()) {
            toml::Reader reader{document, faults};
            auto root = reader.root();
            read(root);
            root.refuse_unknown();
            reader.finish();
        }
        wrong_.add_in_order(faults, document.text());
    }

    void refuse(const std::string& message) {
        wrong_.add_in_order({{Severity::Error, {name_}, {}, message, {}}}, {});
    }
    const Messages& wrong() const { return wrong_; }

private:
    std::string name_;
    const ReadArchiveFile* read_;
    Messages wrong_;
};

std::string text(toml::Table& table, const std::string& key) {
    const auto in_hex = key + "_hex";
    if (table.has(in_hex.c_str())) {
        const auto hex = table.string(in_hex.c_str());
        return hex ? bytes_of_hex(hex->value) : std::string{};
    }
    table.require(key.c_str());
    const auto plain = table.string(key.c_str());
    return plain ? plain->value : std::string{};
}

kitchen::Date date(toml::Table& table, const char* key) {
    table.require(key);
    return table.date(key).value_or(kitchen::Date{});
}

int number(toml::Table& table, const char* key, int least) {
    table.require(key);
    return static_cast<int>(table.integer(key, {least, static_cast<int>(most)}).value_or(least));
}

std::vector<std::string> texts(toml::Table& table, const char* key) {
    return mapped(table.strings(key, most), &toml::Text::value);
}

template <class Enum, std::size_t N>
Enum word(toml::Table& table, const char* key, const char* what,
          const std::array<std::pair<Enum, std::string_view>, N>& known) {
    const auto words =
        mapped(known, [](const auto& one) { return toml::Word{std::string{one.second}}; });
    table.require(key);
    const auto found = table.word(key, what, words);
    return known[found.value_or(0)].first;
}

archive::PackageRecord read_package(toml::Table& table) {
    archive::PackageRecord package;
    package.dish = text(table, "dish");
    package.words = text(table, "words");
    package.made = date(table, "made");
    package.keep_until = date(table, "keep_until");
    package.basis = word(table, "basis", "a kind of date", archive::basis_words);
    package.servings = number(table, "servings", 0);
    if (const auto grams = table.real("grams", {0.0, 1e9})) {
        package.weight = kitchen::Mass{*grams};
    }
    if (table.has("allergens") || table.has("classes")) {
        package.food = archive::FoodRecord{texts(table, "allergens"), texts(table, "classes")};
    }
    if (table.has("thaw")) {
        package.thaw =
            archive::ThawRecord{word(table, "thaw", "a thaw method", archive::thaw_words), {}};
        if (const auto minutes = table.integer("thaw_minutes", {0, most})) {
            package.thaw->lead = std::chrono::minutes{*minutes};
        }
    }
    if (table.has("place")) {
        package.place = text(table, "place");
    }
    package.bags.resize(static_cast<std::size_t>(
        std::min(number(table, "described_bags", 0), archive::Most::bags + 1)));
    return package;
}

/// What is read, and what only folders of before there were batches and events have.
struct FolderReading {
    Contents contents;
    int format = 3;
    std::vector<archive::BagState> states;
};

void read_batch(toml::Table& table, archive::PackageRecord& package) {
    table.require("batch");
    package.batch.number = table.integer("batch", {1, most_of_a_number}).value_or(1);
    package.batch.kitchen = text(table, "batch_kitchen");
    package.batch.size =
        static_cast<int>(table.integer("size", {0, archive::Most::size}).value_or(0));
    package.batch.kitchen_number = static_cast<int>(
        table.integer("kitchen_number", {0, kitchen::highest_kitchen_number}).value_or(0));
    package.origin = text(table, "origin");
}

std::int64_t wide(toml::Table& table, const char* key) {
    table.require(key);
    return table.integer(key, {-most_of_a_number, most_of_a_number}).value_or(0);
}

archive::BagEvent read_event(toml::Table& table) {
    archive::BagEvent event;
    event.state.reset();
    if (table.has("state")) {
        event.state = word(table, "state", "a state of a bag", archive::state_words);
    }
    if (table.has("place")) {
        event.place = text(table, "place");
    }
    event.joined = table.has("joined") ? text(table, "joined") : std::string{};
    event.undoes = table.has("undoes") ? wide(table, "undoes") : 0;
    event.at = text(table, "at");
    event.ordered = wide(table, "ordered");
    event.station = text(table, "station");
    event.seq = wide(table, "seq");
    event.clock = wide(table, "clock");
    event.offset = wide(table, "offset");
    event.boot = text(table, "boot");
    event.uptime = wide(table, "uptime");
    table.refuse_unknown();
    return event;
}

Contents::Bag read_bag(toml::Table& table, FolderReading& reading) {
    Contents::Bag bag;
    bag.ids = texts(table, "ids");
    bag.number = number(table, "number", 1);
    if (reading.format == 1) {
        const auto state = word(table, "state", "a state of a bag", archive::state_words);
        reading.states.push_back({state, text(table, "changed")});
    } else {
        bag.events = mapped(table.tables("event", most), read_event);
    }
    table.refuse_unknown();
    return bag;
}

/// Folders of before there were hashes have none.
void refuse_other_text(toml::Table& table, const std::string& description) {
    const auto hash = table.string("hash");
    if (hash && hash->value != fmt::format("{:016x}", kitchen::fnv_1a(description))) {
        table.reader().error(hash->key, "as-written.toml is not what was exported: its hash is "
                                        "another");
    }
}

void read_day(Folder& folder, const std::string& name, FolderReading& reading) {
    auto& contents = reading.contents;
    Contents::Day day;
    day.record.description = folder.bytes("days/" + name + "/as-written.toml");
    folder.table("days/" + name + "/record.toml", [&](toml::Table& root) {
        day.lineage = number(root, "description", 1);
        day.revision = number(root, "revision", 1);
        refuse_other_text(root, day.record.description);
        day.recorded = text(root, "recorded");
        day.record.made = date(root, "made");
        day.record.kitchen = text(root, "kitchen");
        day.record.file = text(root, "file");
        if (reading.format > 1) {
            day.record.station = text(root, "station");
            day.ordered = wide(root, "ordered");
        }
        for (auto& table : root.tables("package", most)) {
            day.record.packages.push_back(read_package(table));
            if (reading.format > 1) {
                read_batch(table, day.record.packages.back());
            }
            for (auto& bag_table : table.tables("bag", most)) {
                auto bag = read_bag(bag_table, reading);
                bag.day = contents.days.size();
                bag.position = static_cast<int>(day.record.packages.size());
                contents.bags.push_back(std::move(bag));
            }
            table.refuse_unknown();
        }
    });
    contents.days.push_back(std::move(day));
}

using DayNames = std::map<std::string, std::size_t>;

void read_print(Folder& folder, const std::string& name, const DayNames& days, Contents& contents) {
    Contents::Print print;
    auto& setup = print.setup;
    folder.table("prints/" + name + "/print.toml", [&](toml::Table& root) {
        setup.what = text(root, "what");
        print.first_at = text(root, "first_at");
        print.last_at = text(root, "last_at");
        setup.stock = text(root, "stock");
        setup.layout = text(root, "layout");
        setup.settings = text(root, "settings");
        setup.look = text(root, "look");
        for (const auto& day : root.strings("days", most)) {
            const auto known = days.find(day.value);
            if (known == days.end()) {
                root.reader().error(day.key, "there is no such day in this folder");
            } else {
                print.days.push_back(known->second);
            }
        }
        for (auto& file : root.tables("file", most)) {
            setup.files.push_back({text(file, "name"), {}});
            file.refuse_unknown();
        }
        for (auto& key : root.tables("printed", most)) {
            print.keys.push_back({text(key, "key"), text(key, "at"), text(key, "station")});
            key.refuse_unknown();
        }
    });
    for (std::size_t f = 0; f < setup.files.size(); ++f) {
        setup.files[f].text = folder.bytes(fmt::format("prints/{}/file-{}.toml", name, f + 1));
    }
    contents.prints.push_back(std::move(print));
}

/// Names lead nowhere else: they are digits and dashes.
bool is_name(const std::string& name) {
    return !name.empty() &&
           std::ranges::all_of(name, [](char c) { return is_digit(c) || c == '-'; });
}

struct Names {
    int format = 1;
    std::vector<std::string> days;
    std::vector<std::string> prints;
};

Names read_names(Folder& folder) {
    Names names;
    folder.table("archive.toml", [&](toml::Table& root) {
        const int format = number(root, "format", 1);
        if (format > 3) {
            folder.refuse("a later thawslip wrote this folder");
        }
        names = {format, texts(root, "days"), texts(root, "prints")};
    });
    for (const auto* list : {&names.days, &names.prints}) {
        for (const auto& name : *list) {
            if (!is_name(name)) {
                folder.refuse("archive.toml names something that cannot be in this folder");
                return {};
            }
        }
    }
    return names;
}

} // namespace

Outcome<Contents> read_archive_files(const std::string& name, const ReadArchiveFile& read) {
    Folder folder{name, read};
    const auto names = read_names(folder);
    FolderReading reading{{}, names.format, {}};
    auto& contents = reading.contents;
    DayNames days;
    for (const auto& day : names.days) {
        days.emplace(day, contents.days.size());
        read_day(folder, day, reading);
    }
    for (const auto& print : names.prints) {
        read_print(folder, print, days, contents);
    }
    if (folder.wrong().all().empty()) {
        if (names.format == 1) {
            complete(contents, reading.states);
        }
        if (const auto fault = fault_in(contents)) {
            folder.refuse(*fault);
        }
    }
    Outcome<Contents> outcome{{}, folder.wrong()};
    if (outcome.messages.all().empty()) {
        outcome.value = std::move(contents);
    }
    return outcome;
}

} // namespace thawslip::service
