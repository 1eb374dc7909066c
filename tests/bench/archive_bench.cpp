// What ten years of a community kitchen cost the archive: 200 000 bags of 50 000 dishes on 1000
// days, 200 of them still in the freezer. Prints milliseconds, and how much each answer held. With
// a name, the archive stays there, to be asked by the program: `archive_bench /tmp/large.db; time
// thawslip --archive /tmp/large.db freezer list`.
#include "archive/archive.h"
#include "kitchen/bag_id.h"

#include <chrono>
#include <filesystem>
#include <fmt/format.h>
#include <string>

using namespace thawslip;
using namespace thawslip::archive;

namespace {

template <class Work>
void report(const char* what, Work work) {
    const auto start = std::chrono::steady_clock::now();
    const std::size_t count = work();
    const std::chrono::duration<double, std::milli> time = std::chrono::steady_clock::now() - start;
    fmt::print("{:<44} {:>10.2f} ms  ({})\n", what, time.count(), count);
}

DayRecord day(int number) {
    using namespace std::chrono;
    const kitchen::Date made{sys_days{2016y / January / 1} + days{number * 3}};
    DayRecord record{made,
                     "Orchard house",
                     fmt::format("/orchard/{}.toml", number),
                     fmt::format("[day]\nmade = {}\n", kitchen::to_iso(made)),
                     {}};
    const char* dishes[] = {"Squash and red lentil stew", "Apple and sage pork",
                            "Chestnut and kale soup", "Bean and barley pot",
                            "Plum and ginger compote"};
    for (int d = 0; d < 50; ++d) {
        const auto dish = fmt::format("{} {}", dishes[d % 5], d);
        const auto keep_until = kitchen::add_months(made, months{3});
        record.description += fmt::format("[[package]]\ndish = \"{}\"\nservings = 6\nbags = 4\n"
                                          "weight = \"2 kg\"\ncontains = [\"celery\"]\n"
                                          "use_by = {}\n",
                                          dish, kitchen::to_iso(keep_until));
        PackageRecord package{dish,
                              dish,
                              made,
                              keep_until,
                              kitchen::DateBasis::SetByCook,
                              6,
                              kitchen::Mass{2000.0},
                              FoodRecord{{"celery"}, {}},
                              ThawRecord{kitchen::ThawMethod::Refrigerator, std::chrono::hours{22}},
                              {}};
        for (int bag = 1; bag <= 4; ++bag) {
            package.bags.push_back(kitchen::bag_id({dish, made, bag}));
        }
        record.packages.push_back(std::move(package));
    }
    return record;
}

PrintRecord print(int number) {
    return {"2026-10-17T14:05:00", {"labels", "letter-2x5-4x2in", "", "", ""}, {day(number)}};
}

std::size_t fill(Archive& archive) {
    Contents contents;
    for (int number = 0; number < 1000; ++number) {
        auto record = day(number);
        int position = 0;
        for (auto& package : record.packages) {
            ++position;
            for (std::size_t bag = 0; bag < package.bags.size(); ++bag) {
                Contents::Bag kept{{package.bags[bag]},
                                   contents.days.size(),
                                   position,
                                   static_cast<int>(bag + 1),
                                   {}};
                BagEvent event;
                event.state = number < 999 ? State::Eaten : State::Frozen;
                event.at = "2026-10-17T14:05:00";
                kept.events.push_back(std::move(event));
                contents.bags.push_back(std::move(kept));
            }
            package.bags.assign(package.bags.size(), "");
        }
        contents.prints.push_back({"2026-10-17T14:05:00",
                                   "2026-10-17T14:05:00",
                                   {"labels", "letter-2x5-4x2in", "", "", ""},
                                   {contents.days.size()},
                                   {}});
        contents.days.push_back({number + 1, 1, "2026-10-17T14:05:00", number, std::move(record)});
    }
    return static_cast<std::size_t>(archive.merge(contents).bags);
}

} // namespace

int main(int count, char** words) {
    const auto folder = std::filesystem::temp_directory_path() / "thawslip-archive-bench";
    std::filesystem::remove_all(folder);
    const bool keep = count > 1;
    const auto path = keep ? std::string{words[1]} : (folder / "archive.db").string();
    std::filesystem::create_directories(folder);
    const auto open = [&path] { return Archive::open(path, Mode::Write); };
    auto filling = open();
    if (!filling) {
        fmt::print(stderr, "{}\n", filling.fault().message);
        return 1;
    }
    {
        auto archive = std::move(filling).value();
        report("merge 1000 days into an empty archive", [&] { return fill(archive); });
    }
    report("open for reading", [&] { return Archive::open(path, Mode::Read).ok() ? 1U : 0U; });
    auto archive = open();
    if (!archive) {
        return 1;
    }
    auto a = std::move(archive).value();
    const auto id = day(500).packages[7].bags[2];
    report("one bag by its id", [&] { return a.bag(id) ? 1U : 0U; });
    report("ids one slip away", [&] { return a.near_ids("K7Q2M49XD").size(); });
    report("list, 200 bags in the freezer", [&] { return a.bags(Which::InFreezer).size(); });
    report("find \"squ ste 1\" in the freezer",
           [&] { return a.find("squ ste 1", Which::InFreezer).size(); });
    report("find \"squ ste 1\" of all", [&] { return a.find("squ ste 1", Which::All).size(); });
    report("record a print of 200 new bags",
           [&] { return static_cast<std::size_t>(a.record(print(2000)).new_bags); });
    report("record the same again",
           [&] { return static_cast<std::size_t>(a.record(print(2000)).new_bags); });
    report("description and prints of a bag", [&] {
        const auto bag = a.bag(id);
        return a.day(bag->day).description.size() + a.prints_of(bag->day).size();
    });
    report("list all 200 000 bags", [&] { return a.bags(Which::All).size(); });
    report("check", [&] { return a.check().size(); });
    report("contents for an export", [&] { return a.contents().bags.size(); });
    report("backup", [&] {
        a.back_up((folder / "copy.db").string());
        return std::filesystem::file_size(folder / "copy.db");
    });
    std::filesystem::remove_all(folder);
}
