// Somebody else's archive, to be merged: any bytes; a sound one of which some bytes were changed;
// or a sound one of which some values were.

#include "archive/tables/database.h"
#include "fuzz/archives.h"

#include <array>
#include <iterator>
#include <vector>

using namespace thawslip;

namespace {

std::string read(const std::string& file) {
    std::ifstream stream{file, std::ios::binary};
    return {std::istreambuf_iterator<char>{stream}, {}};
}

/// A sound archive, all of it in its file.
const std::string& sound_archive(const fuzz::Memory& memory) {
    static const std::string bytes = [&memory] {
        fuzz::make_archive(memory.file("sound.db"));
        return read(memory.file("sound.db"));
    }();
    return bytes;
}

/// Takes numbers and texts off the input; zeros and nothing at its end.
class Input {
public:
    explicit Input(std::string_view bytes) : left_{bytes} {}
    bool empty() const { return left_.empty(); }
    std::size_t byte() {
        const auto value = left_.empty() ? 0U : static_cast<unsigned char>(left_.front());
        left_.remove_prefix(left_.empty() ? 0 : 1);
        return value;
    }
    std::size_t number(int bytes) {
        std::size_t value = 0;
        for (int i = 0; i < bytes; ++i) {
            value = value << 8U | byte();
        }
        return value;
    }
    std::string_view text() {
        const auto wanted = byte(); // before what is left is asked for
        const auto taken = left_.substr(0, wanted);
        left_.remove_prefix(taken.size());
        return taken;
    }

private:
    std::string_view left_;
};

/// Three bytes say where, one what stands there instead.
std::string with_other_bytes(std::string archive, Input input) {
    while (!input.empty()) {
        const auto place = input.number(3);
        archive[place % archive.size()] = static_cast<char>(input.byte());
    }
    return archive;
}

/// Every column of every table of ours.
std::vector<std::pair<std::string, std::string>> columns_of(const archive::Database& database) {
    std::vector<std::pair<std::string, std::string>> columns;
    auto rows = database.prepare("SELECT t.name, c.name FROM sqlite_schema t, "
                                 "pragma_table_info(t.name) c WHERE t.type = 'table' AND t.name "
                                 "NOT LIKE 'dish_words%' ORDER BY 1, c.cid");
    while (rows.next()) {
        columns.emplace_back(rows.text(0), rows.text(1));
    }
    return columns;
}

void bind_value(archive::FileStatement& statement, Input& input) {
    constexpr std::array<double, 8> odd = {0.0, -1.0, 0.5, 1e9, 1e300, -1e308, 9e18, 1e-300};
    switch (input.byte() % 4) {
    case 0: statement.with_nothing(); break;
    case 1: statement.with(static_cast<int>(input.number(2) << 16U)); break;
    case 2: statement.with(odd[input.byte() % odd.size()]); break;
    default: statement.with(input.text());
    }
}

/// Each a column and what all its rows say instead. Some cannot be: SQLite keeps them out.
void change_values(const std::string& file, Input input) {
    const archive::Database database{file, archive::Access::ReadWrite, std::chrono::seconds{1}};
    const auto columns = columns_of(database);
    while (!input.empty()) {
        const auto& [table, column] = columns[input.byte() % columns.size()];
        try {
            auto update = database.prepare("UPDATE " + table + " SET " + column + " = ?");
            bind_value(update, input);
            update.run();
        } catch (const archive::ArchiveFailure&) {
        }
    }
}

/// The input's first letter says what is done with the rest.
void write_archive(const fuzz::Memory& memory, const std::string& file, std::string_view bytes) {
    if (bytes.starts_with('B')) {
        fuzz::write(file, with_other_bytes(sound_archive(memory), Input{bytes.substr(1)}));
    } else if (bytes.starts_with('V')) {
        fuzz::write(file, sound_archive(memory));
        change_values(file, Input{bytes.substr(1)});
    } else {
        fuzz::write(file, bytes);
    }
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const fuzz::Memory memory;
    memory.remove("other.db");
    write_archive(memory, memory.file("other.db"), fuzz::text_of(data, size));
    auto other = archive::Archive::open(memory.file("other.db"), archive::Mode::Read);
    if (!other) {
        fuzz::hold(!other.fault().message.empty(), "a refusal says why");
        return 0;
    }
    auto archive = std::move(other).value();
    try {
        if (archive.check().empty()) {
            fuzz::hold_merged(memory, archive.contents());
        }
    } catch (const archive::ArchiveFailure& failure) {
        fuzz::hold(failure.what()[0] != '\0', "a failure says why");
    }
    return 0;
}
