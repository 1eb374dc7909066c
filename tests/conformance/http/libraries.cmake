# Where there is no server there is nothing to ask.
if(NOT THAWSLIP_DESK)
    list(FILTER sources EXCLUDE REGEX "/[a-z_]*_test\\.cpp$")
    list(APPEND sources "${folder}/without/skipped_test.cpp")
endif()
