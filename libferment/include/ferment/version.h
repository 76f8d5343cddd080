/* The one place where the version is written: CMake, pyproject.toml and package.json read or check it. */
#ifndef FERMENT_VERSION_H
#define FERMENT_VERSION_H

#define FERMENT_VERSION "0.1.0"
#define FERMENT_VERSION_MAJOR 0
#define FERMENT_VERSION_MINOR 1
#define FERMENT_VERSION_PATCH 0
/* To compare: 10000·major + 100·minor + patch. */
#define FERMENT_VERSION_NUMBER (10000 * FERMENT_VERSION_MAJOR + 100 * FERMENT_VERSION_MINOR + FERMENT_VERSION_PATCH)

#endif
