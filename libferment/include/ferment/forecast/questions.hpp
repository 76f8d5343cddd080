// The questions asked backwards: what to choose so that a stage is ready at an hour.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/forecast/forecast.hpp>

namespace ferment {

/// Which stage is to be ready when: the median of its forecast, on the process's hour axis.
struct Wanted {
  std::string stage = {};
  double ready_h = 0;
};

/// What to choose, and what comes of it.
struct Choice {
  std::string what = {};             ///< "yeast_g", "water_c", "air_c", "start_h" or "move_h"
  std::optional<double> now = {};    ///< what is chosen now; nothing where that is no one number
  double value = 0;                  ///< the choice; of several, the least yeast, the coldest, the latest
  std::vector<double> all = {};      ///< every choice that is ready at that hour, rising
  double ready_h = 0;                ///< with `value`: as wanted
  double rounded = 0;                ///< `value` on the user's scale; the value itself where there is none
  double rounded_ready_h = 0;        ///< with `rounded`
  Process process = {};              ///< with `rounded` in it
  std::vector<Notice> notices = {};  ///< of that process
};

/// Yeast in all, g as weighed: every yeast of the mixes to come before the stage, by one factor. Logarithmic search,
/// 0.01 to 5 % as instant yeast.
/// @param scale_g  what the user's scale shows: 0.1 or 1; 0: not rounded
/// All questions: every choice at which the median of the draws is the wanted hour, settled to 1e-7 h. A curve of few
/// draws tells where to look, the median itself is followed at its turns and jumps; a jump or a hole narrower than a
/// look is passed over.
/// @throws InvalidInput; NoSolution naming the hours within reach, the holes between them (ErrorDetail::ranges) and the
/// nearest choice
FERMENT_API Choice yeast_for(const Process& process, const Wanted& wanted, double scale_g = 0,
                             const Kitchen& kitchen = {}, const std::optional<State>& state = std::nullopt,
                             const ForecastOptions& options = {});

/// Temperature of the main water of the next mix, °C, 0 to 60. @throws as yeast_for; InvalidInput if no mix to come has
/// water whose temperature counts
FERMENT_API Choice water_for(const Process& process, const Wanted& wanted, const Kitchen& kitchen = {},
                             const std::optional<State>& state = std::nullopt, const ForecastOptions& options = {});

/// Temperature of all steady places with such air, from now (the start, or the last look) to the stage, °C. @throws as
/// yeast_for; InvalidInput if there is none
FERMENT_API Choice room_for(const Process& process, const Wanted& wanted, Air air = Air::room,
                            const Kitchen& kitchen = {}, const std::optional<State>& state = std::nullopt,
                            const ForecastOptions& options = {});

/// Latest hour at which the process may begin. @throws as yeast_for
FERMENT_API Choice latest_start(const Process& process, const Wanted& wanted, const Kitchen& kitchen = {},
                                const ForecastOptions& options = {});

/// Latest hour at which the dough of stage `moved` goes into the refrigerator (surroundings of any kind), where it
/// stays to the stage's end. @throws as yeast_for
FERMENT_API Choice refrigerate_from(const Process& process, const Wanted& wanted, const std::string& moved,
                                    const Surroundings& refrigerator, const Kitchen& kitchen = {},
                                    const std::optional<State>& state = std::nullopt,
                                    const ForecastOptions& options = {});

/// Latest hour at which the dough of stage `moved` comes out of its refrigerator into other surroundings, where it
/// stays to the stage's end. @throws as yeast_for
FERMENT_API Choice take_out_at(const Process& process, const Wanted& wanted, const std::string& moved,
                               const Surroundings& into, const Kitchen& kitchen = {},
                               const std::optional<State>& state = std::nullopt, const ForecastOptions& options = {});

template <>
FERMENT_API const Form& form_of<Choice>();

}  // namespace ferment
