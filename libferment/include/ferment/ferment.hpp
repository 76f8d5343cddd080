// All of libferment's C++ interface.
#pragma once

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/base/units.hpp>
#include <ferment/base/values.hpp>
#include <ferment/clock/clock.hpp>
#include <ferment/clock/drift.hpp>
#include <ferment/clock/rise.hpp>
#include <ferment/clock/temperature_law.hpp>
#include <ferment/dough/formula.hpp>
#include <ferment/dough/gas.hpp>
#include <ferment/dough/ingredient.hpp>
#include <ferment/dough/solutes.hpp>
#include <ferment/dough/volume.hpp>
#include <ferment/dough/yeast.hpp>
#include <ferment/heat/mixing.hpp>
#include <ferment/heat/properties.hpp>
#include <ferment/process/check.hpp>
#include <ferment/process/step.hpp>
#include <ferment/process/water.hpp>
#include <ferment/version.hpp>
