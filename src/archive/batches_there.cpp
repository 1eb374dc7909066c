#include "archive/batches_there.h"

#include "archive/tables/columns.h"

#include <algorithm>
#include <iterator>
#include <span>

namespace thawslip::archive {
namespace {

// Names and days of so many packages at once as the statement has places for: "" is no dish.
constexpr std::size_t dishes_at_once = 12;
#define THAWSLIP_OF_DISHES                                                                         \
    "(p.dish, p.made) IN (VALUES (?, ?), (?, ?), (?, ?), (?, ?), (?, ?), (?, ?), (?, ?), (?, ?), " \
    "(?, ?), (?, ?), (?, ?), (?, ?)) "

using Packages = std::span<const PackageRecord>;

/// Binds the names and days of up to `dishes_at_once` packages.
Statement& with_dishes(Statement& statement, Packages packages) {
    for (std::size_t i = 0; i < dishes_at_once; ++i) {
        const bool any = i < packages.size();
        statement.with(any ? packages[i].dish : std::string{})
            .with(any ? kitchen::to_iso(packages[i].made) : std::string{});
    }
    return statement;
}

/// The parts of a day's packages that are asked about together.
std::vector<Packages> asked_together(const DayRecord& day) {
    std::vector<Packages> parts;
    for (Packages left{day.packages}; !left.empty();) {
        parts.push_back(left.first(std::min(left.size(), dishes_at_once)));
        left = left.subspan(parts.back().size());
    }
    return parts;
}

Statement& candidate_question(Connection& connection, Packages packages) {
    return with_dishes(
        connection.statement("SELECT p.kitchen_number, p.batch_kitchen, p.batch, p.size, p.origin, "
                             "d.lineage, i.id, p.servings, d.file, d.kitchen, d.recorded, p.dish, "
                             "p.made FROM package p JOIN bag b ON b.package = p.id JOIN day d ON "
                             "d.id = p.day JOIN bag_id i ON i.bag = b.id AND i.newest = 1 "
                             "WHERE " THAWSLIP_OF_DISHES
                             "ORDER BY d.ordered DESC, d.id DESC, b.number"),
        packages);
}

bool may_be_of(const PackageRecord& package, const Statement& row) {
    return package.dish == row.text(11) && kitchen::to_iso(package.made) == row.text(12) &&
           package.batch.size == static_cast<int>(row.integer(3));
}

void add_candidate(std::vector<Candidate>& found, const Statement& row) {
    const auto batch = batch_at(row, 0);
    auto same = std::ranges::find(found, batch, &Candidate::batch);
    if (same == found.end()) {
        found.push_back({batch,
                         row.text(4),
                         static_cast<int>(row.integer(5)),
                         {row.text(6), 0, static_cast<int>(row.integer(7)), row.text(8),
                          row.text(9), row.text(10)}});
        same = std::prev(found.end());
    }
    ++same->known.bags;
}

Statement& taken_question(Connection& connection, Packages packages) {
    return with_dishes(
        connection.statement("SELECT DISTINCT p.kitchen_number, p.batch_kitchen, p.batch, p.size, "
                             "p.dish, p.made FROM package p WHERE " THAWSLIP_OF_DISHES),
        packages);
}

std::vector<std::vector<Candidate>> candidates_of(Connection& connection, Packages packages) {
    std::vector<std::vector<Candidate>> found(packages.size());
    auto& rows = candidate_question(connection, packages);
    while (rows.next()) {
        for (std::size_t i = 0; i < packages.size(); ++i) {
            if (may_be_of(packages[i], rows)) {
                add_candidate(found[i], rows);
            }
        }
    }
    return found;
}

} // namespace

std::vector<std::vector<Candidate>> all_candidates(Connection& connection, const DayRecord& day) {
    std::vector<std::vector<Candidate>> all;
    for (const auto part : asked_together(day)) {
        std::ranges::move(candidates_of(connection, part), std::back_inserter(all));
    }
    return all;
}

std::vector<NamedBatch> all_taken(Connection& connection, const DayRecord& day) {
    std::vector<NamedBatch> taken;
    for (const auto part : asked_together(day)) {
        auto& rows = taken_question(connection, part);
        while (rows.next()) {
            taken.push_back({rows.text(4), rows.text(5), batch_at(rows, 0)});
        }
    }
    return taken;
}

void ask_batches_ahead(Connection& connection, const DayRecord& day) {
    for (const auto part : asked_together(day)) {
        candidate_question(connection, part).ahead();
        taken_question(connection, part).ahead();
    }
}

} // namespace thawslip::archive
