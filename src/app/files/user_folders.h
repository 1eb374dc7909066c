#pragma once

#include <string>

namespace thawslip::app {

/// A folder named by a variable of the environment, without slashes at its end; a relative one
/// counts as none (XDG Base Directory Specification, 0.8). Empty where there is none.
std::string folder_in(const char* variable);

/// A place below a folder of the user: below what `variable` names, else below `otherwise` in the
/// home folder (the same specification). Empty where neither is known.
std::string user_place(const char* variable, const std::string& otherwise, const std::string& name);

/// Where the user keeps documents, as the desktop has it set (freedesktop.org, xdg-user-dirs,
/// user-dirs.dirs); else "Documents" in the home folder where that is there; else the home folder.
/// Empty where no home folder is known.
std::string documents_folder();

} // namespace thawslip::app
