#pragma once

#include "kitchen/date.h"
#include "kitchen/storage/storage.h"

#include <optional>

namespace thawslip::kitchen {

/// How the printed date came about: the difference between "Use by" and "Best if used by".
enum class DateBasis { SetByCook, StorageTable };

struct KeepUntil {
    Date date;
    DateBasis basis = DateBasis::SetByCook;
    std::optional<StorageRow> row; ///< the row that gave the date, for StorageTable
};

} // namespace thawslip::kitchen
