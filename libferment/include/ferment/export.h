/* Marks what a shared libferment exports; everything else is hidden. */
#ifndef FERMENT_EXPORT_H
#define FERMENT_EXPORT_H

#if defined(_WIN32)
#if defined(FERMENT_SHARED) && defined(FERMENT_BUILDING)
#define FERMENT_API __declspec(dllexport)
#elif defined(FERMENT_SHARED)
#define FERMENT_API __declspec(dllimport)
#else
#define FERMENT_API
#endif
#else
#define FERMENT_API __attribute__((visibility("default")))
#endif

#endif
