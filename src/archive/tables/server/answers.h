#pragma once

#include "archive/tables/server/values.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace thawslip::archive {

/// Whether a statement may see another table's rows than before once `change` is done: its text
/// names the table that an INSERT or UPDATE writes to.
bool is_about(std::string_view question, std::string_view change);

/// A question, by its text and with what it is asked.
using Asked = std::pair<std::string, std::vector<Parameter>>;

/// What was asked ahead and answered, and not used yet.
class Answers {
public:
    void put(Asked asked, Rows rows) { known_.insert_or_assign(std::move(asked), std::move(rows)); }
    bool has(const Asked& asked) const { return known_.contains(asked); }
    /// Each answer is good for one use.
    std::optional<Rows> take(const Asked& asked);
    /// A change makes them wrong that are about what it changes.
    void forget_changed(std::string_view change);
    void clear() { known_.clear(); }

private:
    std::map<Asked, Rows> known_;
};

} // namespace thawslip::archive
