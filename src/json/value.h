#pragma once

#include "json/json.h"

#include <nlohmann/json.hpp>
