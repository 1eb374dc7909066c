#pragma once

#include <string>

namespace thawslip::app {

/// A folder of our own, for its owner alone, for what nobody keeps. Gone with the object.
class ScratchFolder {
public:
    ScratchFolder(); ///< \throws SystemFailure where none can be made
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;
    ~ScratchFolder();
    std::string file(const std::string& name) const;

private:
    std::string path_;
};

} // namespace thawslip::app
