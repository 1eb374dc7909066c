#include "archive/archive.h"
#include "archive/tables/rows.h"

#include <charconv>
#include <fmt/format.h>

namespace thawslip::archive {
namespace {

constexpr int most_cells = 10'000; ///< of any sheet, whatever a file says

bool can_be(int cell) {
    return cell >= 1 && cell <= most_cells;
}

/// The numbers of "9 10"; what is none is left out.
std::vector<int> cells_in(const std::string& text) {
    std::vector<int> cells;
    const char* at = text.data();
    const char* const end = at + text.size();
    while (at < end) {
        int cell = 0;
        const auto read = std::from_chars(at, end, cell);
        if (read.ec == std::errc{} && can_be(cell)) {
            cells.push_back(cell);
        }
        at = read.ptr + (read.ptr == at || read.ptr < end ? 1 : 0);
    }
    return cells;
}

} // namespace

void put_sheet(Connection& connection, const UsedSheet& sheet) {
    const auto skipped = fmt::format("{}", fmt::join(sheet.skipped, " "));
    connection.statement("UPDATE sheet SET next_cell = ?, skipped = ?, at = ? WHERE stock = ?")
        .with(sheet.next_cell)
        .with(skipped)
        .with(sheet.at)
        .with(sheet.stock)
        .run();
    connection
        .statement("INSERT INTO sheet (stock, next_cell, skipped, at) VALUES (?, ?, ?, ?) ON "
                   "CONFLICT DO NOTHING")
        .with(sheet.stock)
        .with(sheet.next_cell)
        .with(skipped)
        .with(sheet.at)
        .run();
}

std::optional<UsedSheet> Archive::used_sheet(const std::string& stock) {
    const Question question{*connection_};
    auto& row = connection_->statement("SELECT next_cell, skipped, at FROM sheet WHERE stock = ?")
                    .with(stock);
    if (!row.next() || row.integer(0) < 1 || row.integer(0) > most_cells) {
        return std::nullopt;
    }
    return UsedSheet{stock, static_cast<int>(row.integer(0)), cells_in(row.text(1)), row.text(2)};
}

bool is_of_station(Connection& connection) {
    return connection.is_file() && connection.statement("SELECT 1 FROM link LIMIT 1").next();
}

std::optional<Link> Archive::link() {
    const Question question{*connection_};
    if (!connection_->is_file()) {
        return std::nullopt;
    }
    auto& row = connection_->statement("SELECT address, asked, tried FROM link");
    return row.next() ? std::optional{Link{row.text(0), row.text(1), row.integer(2)}}
                      : std::nullopt;
}

void Archive::put_link(const Link& link) {
    const Question question{*connection_};
    Transaction transaction{*connection_};
    connection_->statement("DELETE FROM link").run();
    connection_->statement("INSERT INTO link (address, asked, tried) VALUES (?, ?, ?)")
        .with(link.address)
        .with(link.asked)
        .with(link.tried)
        .run();
    transaction.commit();
}

void Archive::use_sheet(const UsedSheet& sheet) {
    const Question question{*connection_};
    Transaction transaction{*connection_};
    put_sheet(*connection_, sheet);
    transaction.commit();
}

} // namespace thawslip::archive
