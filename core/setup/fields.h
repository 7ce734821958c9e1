// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <array>
#include <cstddef>
#include <span>
#include <variant>

/// The one table of the setup's numbers and words. The file reader and writer, the validator, the
/// craft form and docs/setup-file.md all come from it, so none of them can disagree about a range
/// or a default.
namespace stillbay {

/// What happens when the key is absent.
enum class Presence {
    Required,         ///< an error
    Optional,         ///< takes the member's default
    WrittenWhereSet,  ///< likewise, and a file without it is saved without it
};

/// One number (or tuple of numbers) of a struct of the setup.
template <class Owner>
struct Field {
    using Member = std::variant<double Owner::*, int Owner::*, std::optional<double> Owner::*,
                                Triple Owner::*, std::optional<Triple> Owner::*,
                                std::array<double, 2> Owner::*, std::vector<double> Owner::*>;

    const char* key;      ///< JSON key, unit included, e.g. "free_length_mm"
    const char* label;    ///< what the form calls it, sentence case, no unit
    const char* unit;     ///< as shown behind the number; "" when it has none
    const char* meaning;  ///< one plain sentence for the hover text and the docs
    double min;           ///< allowed range, both ends included; for tuples: of each entry
    double max;
    double step;   ///< a practical step for spin box and slider
    int decimals;  ///< decimals shown in the form (the file keeps all)
    Presence presence;
    Member member;
};

/// The fields of one struct, in the order of the file and the form. Specialised for Part,
/// ArmSection, Arm, Motor, Propeller, Battery, Drive, Bay, Camera, TubeKind, MountPoint, Mounts,
/// Flight, FlightNote, Limits, Source, NamedRecording and Design.
template <class Owner>
std::span<const Field<Owner>> fieldsOf();

// clang-format off
template <> std::span<const Field<Part>> fieldsOf<Part>();
template <> std::span<const Field<ArmSection>> fieldsOf<ArmSection>();
template <> std::span<const Field<Arm>> fieldsOf<Arm>();
template <> std::span<const Field<Motor>> fieldsOf<Motor>();
template <> std::span<const Field<Propeller>> fieldsOf<Propeller>();
template <> std::span<const Field<Battery>> fieldsOf<Battery>();
template <> std::span<const Field<Drive>> fieldsOf<Drive>();
template <> std::span<const Field<Bay>> fieldsOf<Bay>();
template <> std::span<const Field<Camera>> fieldsOf<Camera>();
template <> std::span<const Field<TubeKind>> fieldsOf<TubeKind>();
template <> std::span<const Field<MountPoint>> fieldsOf<MountPoint>();
template <> std::span<const Field<Mounts>> fieldsOf<Mounts>();
template <> std::span<const Field<Flight>> fieldsOf<Flight>();
template <> std::span<const Field<FlightNote>> fieldsOf<FlightNote>();
template <> std::span<const Field<Limits>> fieldsOf<Limits>();
template <> std::span<const Field<Source>> fieldsOf<Source>();
template <> std::span<const Field<NamedRecording>> fieldsOf<NamedRecording>();
template <> std::span<const Field<Design>> fieldsOf<Design>();
// clang-format on

/// A choice between words of the setup: how the file writes the enumerators, in their order. An
/// absent key takes the first.
struct Choice {
    const char* label;  ///< what messages call it, sentence case
    std::span<const char* const> words;
};

/// Specialised for Ends, Lens, Seen, Origin, RecordingKind and ColumnRole.
template <class Enum>
const Choice& choiceOf();

// clang-format off
template <> const Choice& choiceOf<Ends>();
template <> const Choice& choiceOf<Lens>();
template <> const Choice& choiceOf<Seen>();
template <> const Choice& choiceOf<Origin>();
template <> const Choice& choiceOf<RecordingKind>();
template <> const Choice& choiceOf<ColumnRole>();
// clang-format on

/// Widest view of a lens that is no fisheye [°]: towards 180 its picture would have no end.
inline constexpr double kWidestRectilinear_deg = 170.0;

/// How many entries a list may have, both ends included.
struct CountRange {
    std::size_t min;
    std::size_t max;
    bool isWrittenWhereSet = false;  ///< a file without the list is saved without it
};

inline constexpr CountRange kPartCount{1, 100};  ///< of the airframe, and of the bay
inline constexpr CountRange kArmCount{2, 16};    ///< one motor each; a single one cannot hover
inline constexpr CountRange kMountPointCount{1, 32};
inline constexpr CountRange kBladePassCount{0, 8};       ///< orders B, 2B, …
inline constexpr CountRange kThrottleCurveCount{2, 33};  ///< pairs, where there is a curve
inline constexpr CountRange kFlightNoteCount{0, 200, true};
inline constexpr CountRange kTuneCount{0, 200};
inline constexpr CountRange kSourceCount{0, 200};
inline constexpr CountRange kRecordingCount{0, 200, true};
inline constexpr CountRange kReadColumnCount{0, 500, true};

inline constexpr std::size_t kMaxNameBytes = 200;     ///< of any name, UTF-8
inline constexpr std::size_t kMaxPathBytes = 4096;    ///< of a file's path, UTF-8
inline constexpr std::size_t kMaxNotesBytes = 20000;  ///< of any notes, UTF-8

}  // namespace stillbay
