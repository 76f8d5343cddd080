#include <ferment/process/step.hpp>

#include <ferment/base/field.hpp>

namespace ferment {
namespace {

void require_if_given(const Field& field, const std::optional<double>& value) {
  if (value) require(field, *value);
}

struct CheckMixing {
  void operator()(const ByMethod& m) const {
    mixing_method_named(m.method);
    require_if_given(field::mixing_min, m.minutes);
    require_if_given(field::hydration_kj_per_kg, m.hydration_kj_per_kg);
  }
  void operator()(const ByWork& w) const {
    require(field::work_kj_per_kg, w.work_kj_per_kg);
    require_if_given(field::hydration_kj_per_kg, w.hydration_kj_per_kg);
  }
  void operator()(const ByNetGain& g) const {
    require(field::net_gain_kj_per_kg, g.net_gain_kj_per_kg);
    require(field::sd_kj_per_kg, g.sd_kj_per_kg);
    require(field::mixing_min, g.minutes);
  }
};

}  // namespace

void check_mix(const Mix& mix) {
  percent_of(mix.formula);
  require(field::room_c, mix.room_c);
  require_if_given(field::flour_c, mix.flour_c);
  require_if_given(field::water_c, mix.water_c);
  require_if_given(field::tap_c, mix.tap_c);
  require(field::ice_c, mix.ice_c);
  require_if_given(field::milk_c, mix.milk_c);
  require_if_given(field::egg_c, mix.egg_c);
  require_if_given(field::butter_c, mix.butter_c);
  heat_capacity_kj(mix.bowl);
  require_if_given(field::bowl_c, mix.bowl.temperature_c);
  if (mix.mixing) std::visit(CheckMixing{}, *mix.mixing);
  require(field::rest_h, mix.rest_h);
  require_if_given(field::heat_loss_w_per_k, mix.heat_loss_w_per_k);
}

}  // namespace ferment
