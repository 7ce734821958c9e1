// SPDX-License-Identifier: MIT
#include "ui/craft/quick_layouts.h"

#include "ui/document/craft_layout.h"

#include <QObject>

namespace stillbay::ui {
namespace {

RowLayout arms(const QString& title, int count, Forward forward = Forward::Gap)
{
    return {title, QObject::tr("lay out %1 arms").arg(count), [count, forward](Setup& setup) {
                spreadArms(setup.airframe, count, forward);
            }};
}

RowLayout tubes(const QString& title, const QString& undoText, Mirror mirror)
{
    return {title, undoText, [mirror](Setup& setup) {
                mirrorTubes(setup.mounts, mirror);
            }};
}

}  // namespace

RowLayouts armLayouts()
{
    return {
        QObject::tr("Lay out arms"),
        QObject::tr("Sets all arms at once, evenly around the craft, each like the first arm: same "
                    "length, root radius and height. One step to undo."),
        QObject::tr("The arms stand like this already."),
        {arms(QObject::tr("&3 arms as a Y, foot backwards"), 3),
         arms(QObject::tr("&4 arms as an X"), 4),
         arms(QObject::tr("4 arms as a &plus"), 4, Forward::Arm),
         arms(QObject::tr("&6 arms evenly"), 6), arms(QObject::tr("&8 arms evenly"), 8)}};
}

RowLayouts tubeLayouts()
{
    return {QObject::tr("Mirror tubes"),
            QObject::tr(
                "Mirrors the tubes on the side of tube 1 to the other side, in place of those that "
                "are there; tubes in the middle stay. One step to undo."),
            QObject::tr("The tubes are mirrored like this already."),
            {tubes(QObject::tr("&Left and right"), QObject::tr("mirror tubes left and right"),
                   Mirror::LeftRight),
             tubes(QObject::tr("&Front and back"), QObject::tr("mirror tubes front and back"),
                   Mirror::FrontBack),
             tubes(QObject::tr("&Both ways: one tube makes four"),
                   QObject::tr("mirror tubes both ways"), Mirror::Both)}};
}

}  // namespace stillbay::ui
