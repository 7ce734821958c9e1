// SPDX-License-Identifier: MIT
#include "ui/bay/lit_pieces.h"

#include "core/setup/tunes.h"

#include <QRegularExpression>

#include <algorithm>
#include <optional>

namespace stillbay::ui {
namespace {

// The path leads to a member or into it.
bool isIn(const QString& path, const QString& member)
{
    return path.startsWith(member) && (path.size() == member.size() ||
                                       path[member.size()] == u'.' || path[member.size()] == u'[');
}

// 2 of "bay.parts[2].mass_g" in the list "bay.parts".
std::optional<int> entryOf(const QString& path, const QString& list)
{
    if (!path.startsWith(list + u'['))
        return std::nullopt;
    const qsizetype from = list.size() + 1;
    bool isNumber = false;
    const int entry = path.mid(from, path.indexOf(u']', from) - from).toInt(&isNumber);
    return isNumber && entry >= 0 ? std::optional(entry) : std::nullopt;
}

// The drive's battery hangs in the bay, in many crafts; only its name tells.
std::vector<LitPieces> batteryOf(const Setup& setup)
{
    static const QRegularExpression names(
        QStringLiteral("\\b(batter(y|ies)|batterie|akkus?|accu|li-?pos?|li-?ion|packs?)\\b"),
        QRegularExpression::CaseInsensitiveOption | QRegularExpression::UseUnicodePropertiesOption);
    const Part* const heaviest = heaviestPart(setup.bay);
    if (!heaviest || !QString::fromStdString(heaviest->name).contains(names))
        return {};
    return {{Piece::Bay, static_cast<int>(heaviest - setup.bay.parts.data())}};
}

}  // namespace

std::vector<LitPieces> piecesOf(const QString& path, const Setup& setup)
{
    struct List {
        QString path;
        Piece piece;
    };
    for (const List& list : {List{QStringLiteral("bay.parts"), Piece::Bay},
                             List{QStringLiteral("airframe.parts"), Piece::Airframe},
                             List{QStringLiteral("airframe.arms"), Piece::Arm},
                             List{QStringLiteral("mounts.points"), Piece::Tube}})
        if (const auto entry = entryOf(path, list.path))
            return {{list.piece, *entry}};
    if (isIn(path, QStringLiteral("airframe.arm")))
        return {{Piece::Arm}};
    if (isIn(path, QStringLiteral("drive.motor")))
        return {{Piece::Motor}};
    if (isIn(path, QStringLiteral("drive.propeller")))
        return {{Piece::Propeller}};
    if (isIn(path, QStringLiteral("drive.battery")))
        return batteryOf(setup);
    if (isIn(path, QStringLiteral("camera")))
        return {{Piece::View}};
    if (isIn(path, QStringLiteral("tube")) || isIn(path, QStringLiteral("mounts")))
        return {{Piece::Tube}};
    return {};
}

bool isLit(const std::vector<LitPieces>& lit, Piece piece, int index)
{
    return std::any_of(lit.begin(), lit.end(), [&](const LitPieces& pieces) {
        return pieces.piece == piece && (pieces.index == kEveryPiece || pieces.index == index);
    });
}

}  // namespace stillbay::ui
