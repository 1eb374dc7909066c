#pragma once

#include "base/key_path.h"

#include <string>
#include <vector>

namespace thawslip::desk {

/// Hints as a page can use them. What names a command, which a cook at the page does not type, is
/// left out: of a hint's parts, between "; ", those that hold one, but for what stands before it as
/// a sentence of its own. For an option stands the key of its field's name among the words of the
/// page, "{print.from}", which the page puts in; a hint that names one which the page has no field
/// for is left out.
std::vector<std::string> page_hints(const std::vector<std::string>& hints);

/// What a command says of what it did, a line each, as a page can use it: of a line's sentences
/// those that need no command line, as of hints.
std::string page_said(const std::string& said);

/// What a message says, with the keys of fields for options. At a field, which has a name of its
/// own, without the file's word for it: "cannot be read as until: …" is "cannot be read: …". \param
/// key what the message is about; empty: no field
std::string page_text(const std::string& text, const KeyPath& key);

} // namespace thawslip::desk
