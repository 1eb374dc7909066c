#pragma once

#include "archive/contents.h"
#include "archive/tables/connection.h"

#include <string>
#include <vector>

namespace thawslip::archive {

/// Everything that is wrong with an archive of this program's schema: by SQLite's check of its
/// pages and references, and by all of the below. What stands in a schema of somebody else's is not
/// looked into. Throws ArchiveFailure where it asks for more work than its size explains.
std::vector<std::string> faults_in(Connection& connection);
/// The same; where nothing is wrong, all that it holds is read into `contents` on the way.
std::vector<std::string> faults_in(Connection& connection, Contents& contents);

// What SQLite's own check cannot know: each gives all that is wrong, in words; nothing where all is
// well.

/// Tables, indexes, views and triggers that are not as our steps make them (schema.h). What SQLite
/// keeps for itself, and the tables inside the word index but for their kind, are not looked at.
std::vector<std::string> faults_of_schema(const Database& database);

/// Descriptions that are not what their hash says: something else than Thawslip changed them.
std::vector<std::string> faults_of_descriptions(Connection& connection);

/// Values that no description can give: counts, dates, weights, names (archive/limits.h), and words
/// that are none of ours.
std::vector<std::string> faults_of_values(Connection& connection);

/// Bags whose state is not that of their last event.
std::vector<std::string> faults_of_states(Connection& connection);

/// What a merge of it would be refused for (archive/contents.h).
std::vector<std::string> faults_of_contents(const Contents& contents);

/// Makes the indexes of this program's schema that are not there. \returns how many
int make_missing_indexes(const Database& database);

/// Whether the index of words says what the packages say (SQLite, "FTS5 Extension", 6.4, the
/// 'integrity-check' command).
std::vector<std::string> faults_of_words(const Database& database);

/// Bags that stand beyond their package's number of bags, and prints of nothing.
std::vector<std::string> faults_of_references(Connection& connection);

} // namespace thawslip::archive
