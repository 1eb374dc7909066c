# What a rule finds is held against the words of every language.
list(APPEND libraries thawslip::wording)
list(APPEND alone allergens_test.cpp beans_test.cpp cautions_test.cpp cook_time_test.cpp
    hold_time_test.cpp local_clock_test.cpp plan_test.cpp plausible_test.cpp sizes_test.cpp
    storage_test.cpp thaw_lead_test.cpp thaw_time_test.cpp timeline_test.cpp)
