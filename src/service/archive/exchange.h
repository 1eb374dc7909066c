#pragma once

#include "archive/archive.h"
#include "base/progress.h"
#include "service/messages.h"

#include <string>

namespace thawslip::service {

/// Refuses what comes from others and is not what its own descriptions say.
/// \param from what messages call it
Outcome<archive::Contents> held_to_be_true(archive::Contents contents, const std::string& from,
                                           const Progress& progress = {});

/// All that another archive holds, for merging. Refused where it is damaged or untrue.
Outcome<archive::Contents> contents_to_merge(archive::Archive& other, const std::string& from,
                                             const Progress& progress = {});

/// All that an archive holds, for a folder. Refused where a description is not what was recorded.
Outcome<archive::Contents> contents_to_export(archive::Archive& archive);

/// Adds what `contents` hold and the archive does not. Which bags were left out, for their ids may
/// be on others here, is said.
Outcome<archive::Merged> add_contents(archive::Archive& archive, const archive::Contents& contents,
                                      const std::string& from, archive::Kitchens kitchens);

/// What is wrong with an archive, and what helps: nothing where it is sound.
Messages faults_of(archive::Archive& archive, const Progress& progress = {});

/// What the archive of before, which is kept as `kept`, holds and the one that was put into its
/// place does not. A merge of copies tells: neither is changed where both were opened so.
Messages left_behind(archive::Archive& before, archive::Archive& now, const std::string& kept);

} // namespace thawslip::service
