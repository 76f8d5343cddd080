// Elementary functions of the model, generic over the scalar type.
//
// For double they are our own, free of branches and calls: a plain loop over them vectorises, and C++, Python,
// C and WebAssembly give the same digits whatever the platform's libm (with -ffp-contract=off). A formula says
// `using math::exp; exp(x)`: for double it gets ours, for a 100-digit or dual number that type's own.
#pragma once

#include <cstdint>
#include <cstring>

#if defined(__GNUC__)
#define FERMENT_INLINED __attribute__((always_inline))
#define FERMENT_INLINE inline FERMENT_INLINED
#else
#define FERMENT_INLINED
#define FERMENT_INLINE inline
#endif

namespace ferment::math {

FERMENT_INLINE std::uint64_t bits_of(double x) {
  std::uint64_t bits;
  std::memcpy(&bits, &x, sizeof bits);  // std::bit_cast is missing in emscripten 3.1
  return bits;
}
FERMENT_INLINE double from_bits(std::uint64_t bits) {
  double x;
  std::memcpy(&x, &bits, sizeof x);
  return x;
}

template <class T>
FERMENT_INLINE T select(bool condition, T yes, T no) {
  return condition ? yes : no;
}
template <class T>
FERMENT_INLINE T smaller(T a, T b) {
  return select<T>(a < b, a, b);
}
template <class T>
FERMENT_INLINE T larger(T a, T b) {
  return select<T>(a > b, a, b);
}

namespace constant {
inline constexpr double ln2_high = 6.93147180369123816490e-01;  // fdlibm: 33 bits, so that k·ln2_high is exact
inline constexpr double ln2_low = 1.90821492927058770002e-10;
inline constexpr double log2_e = 1.44269504088896338700e+00;
inline constexpr double round_magic = 6755399441055744.0;  // 1.5·2^52: adding it rounds to an integer in the low bits
}  // namespace constant

/// exp(x) = scale·(1 + reduced) with reduced = e^r − 1, |r| ≤ ln2/2. For x up to 708; below −708 as at −708.
struct ExpParts {
  double scale;
  double reduced;
};

FERMENT_INLINE ExpParts exp_parts(double x) {
  const double clipped = larger(x, -708.0);
  const double shifted = clipped * constant::log2_e + constant::round_magic;
  const double k = shifted - constant::round_magic;
  const double r = (clipped - k * constant::ln2_high) - k * constant::ln2_low;
  // Taylor series of e^r − 1 to r^13 (the next term is below 2^-57 of the sum), in pairs for short dependency chains.
  const double r2 = r * r;
  const double r4 = r2 * r2;
  const double low = (1.0 / 2 + r * (1.0 / 6)) + r2 * (1.0 / 24 + r * (1.0 / 120));
  const double middle = (1.0 / 720 + r * (1.0 / 5040)) + r2 * (1.0 / 40320 + r * (1.0 / 362880));
  const double high = (1.0 / 3628800 + r * (1.0 / 39916800)) + r2 * (1.0 / 479001600 + r * (1.0 / 6227020800));
  const double reduced = r + r2 * (low + r4 * (middle + r4 * high));
  const double scale = from_bits((bits_of(shifted) << 52) + 0x3ff0000000000000u);
  return {scale, reduced};
}

FERMENT_INLINE double exp(double x) {
  const ExpParts p = exp_parts(x);
  return p.scale + p.scale * p.reduced;
}

FERMENT_INLINE double expm1(double x) {
  const ExpParts p = exp_parts(x);
  return (p.scale - 1) + p.scale * p.reduced;
}

/// ln(u) + correction/u for u > 0, a normal number: fdlibm's reduction and polynomial (Sun Microsystems 1993).
/// `exact` replaces u − 1 where u needs no scaling (√½ ≤ u < √2), and then nothing is left to correct.
FERMENT_INLINE double log_corrected(double u, double exact, double correction) {
  constexpr std::uint64_t sqrt_half = 0x3fe6a09e667f3bcdu;
  const std::uint64_t shifted = bits_of(u) + (0x3ff0000000000000u - sqrt_half);
  const double k = from_bits((shifted >> 52) | 0x4330000000000000u) - (4503599627370496.0 + 1023.0);
  const double scaled = from_bits((shifted & 0x000fffffffffffffu) + sqrt_half) - 1;
  const double f = select(k == 0, exact, scaled);
  const double s = f / (2 + f);
  const double z = s * s;
  const double w = z * z;
  const double even = w * (3.999999999940941908e-01 + w * (2.222219843214978396e-01 + w * 1.531383769920937332e-01));
  const double odd =
      z * (6.666666666666735130e-01 +
           w * (2.857142874366239149e-01 + w * (1.818357216161805012e-01 + w * 1.479819860511658591e-01)));
  const double half_square = 0.5 * f * f;
  return k * constant::ln2_high - ((half_square - (s * (half_square + (even + odd)) +
                                                   (k * constant::ln2_low + select(k == 0, 0.0, correction)))) -
                                   f);
}

FERMENT_INLINE double log(double x) { return log_corrected(x, x - 1, 0.0); }

FERMENT_INLINE double log1p(double x) {
  const double u = 1 + x;
  const double taken = u - 1;
  const double lost = (1 - (u - taken)) + (x - taken);  // what rounding took from 1 + x (Knuth's two-sum)
  // lost/u is needed to a tenth of an ulp only, because the logarithm is at least ln √2 here: an eighth is good enough
  // for 1/u, and the bit pattern of a reciprocal is nearly linear in that of its argument.
  const double roughly_reciprocal = from_bits(0x7fde000000000000u - bits_of(u));
  return log_corrected(u, x, lost * roughly_reciprocal);
}

}  // namespace ferment::math
