// SPDX-License-Identifier: MIT
#pragma once

#include "ui/bay/craft_shape.h"

#include <QString>

#include <vector>

namespace stillbay::ui {

inline constexpr int kEveryPiece = -1;

/// Pieces of one kind: one of them, or every one.
struct LitPieces {
    Piece piece = Piece::Bay;
    int index = kEveryPiece;

    bool operator==(const LitPieces&) const = default;
};

/// What of the craft a field belongs to.
///
/// @param path  of the field in the setup's file: "bay.parts[1].mass_g"
std::vector<LitPieces> piecesOf(const QString& path, const Setup& setup);

bool isLit(const std::vector<LitPieces>& lit, Piece piece, int index);

}  // namespace stillbay::ui
