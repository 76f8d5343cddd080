// The one place where the version is written: CMake, pyproject.toml and package.json read or check it.
#ifndef FERMENT_VERSION_HPP
#define FERMENT_VERSION_HPP

#define FERMENT_VERSION "0.1.0"

#endif
