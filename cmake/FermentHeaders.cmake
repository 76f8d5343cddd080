# Header-only build requirements, for inside the library only: Eigen, Boost.Math and nlohmann-json. Found in this order: a folder
# given as FERMENT_HEADERS (a list), the wheels of a Python build (pip install .), the system.
set(FERMENT_HEADERS "" CACHE STRING "Folders to search first for Eigen, Boost and nlohmann headers")

set(hints ${FERMENT_HEADERS})
if(SKBUILD)
  find_package(Python REQUIRED COMPONENTS Interpreter)
  execute_process(
    COMMAND ${Python_EXECUTABLE} -c "import sys, pathlib
for entry in map(pathlib.Path, sys.path):
    for folder in ('libboost_headers/include', 'cmeel.prefix/include/eigen3', 'nlohmann_json/include'):
        if (entry / folder).is_dir(): print(entry / folder)"
    OUTPUT_VARIABLE wheels OUTPUT_STRIP_TRAILING_WHITESPACE COMMAND_ERROR_IS_FATAL ANY)
  string(REPLACE "\n" ";" wheels "${wheels}")
  list(APPEND hints ${wheels})
endif()

add_library(ferment_headers INTERFACE)
foreach(pair IN ITEMS "Eigen=Eigen/Dense=libeigen3-dev" "Boost=boost/math/special_functions/lambert_w.hpp=libboost-dev"
    "Json=nlohmann/json.hpp=nlohmann-json3-dev")
  string(REPLACE "=" ";" pair "${pair}")
  list(GET pair 0 name)
  list(GET pair 1 header)
  list(GET pair 2 debian)
  find_path(FERMENT_${name}_INCLUDE ${header} HINTS ${hints} PATH_SUFFIXES eigen3)
  if(NOT FERMENT_${name}_INCLUDE)
    message(FATAL_ERROR "${name} headers (${header}) were not found. On Debian: apt-get install ${debian}. "
      "Elsewhere: pass -DFERMENT_HEADERS=<folder that holds ${header}>.")
  endif()
  target_include_directories(ferment_headers SYSTEM INTERFACE ${FERMENT_${name}_INCLUDE})
endforeach()
# Boost.Math would promote double to long double, which is slow and differs between platforms.
target_compile_definitions(ferment_headers INTERFACE
  BOOST_MATH_PROMOTE_DOUBLE_POLICY=false BOOST_MATH_NO_LONG_DOUBLE_MATH_FUNCTIONS EIGEN_MPL2_ONLY JSON_NO_IO JSON_USE_IMPLICIT_CONVERSIONS=0
  # Errors of Boost would be texts made with streams; nothing here reads them.
  BOOST_MATH_DOMAIN_ERROR_POLICY=errno_on_error BOOST_MATH_POLE_ERROR_POLICY=errno_on_error
  BOOST_MATH_OVERFLOW_ERROR_POLICY=errno_on_error BOOST_MATH_EVALUATION_ERROR_POLICY=errno_on_error)
