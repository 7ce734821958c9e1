// SPDX-License-Identifier: MIT
#include "ui/craft/quick_layouts.h"

#include "ui/document/craft_layout.h"

#include <QCoreApplication>

namespace stillbay::ui {
namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("stillbay::ui", text);  // where the tools file a free tr()
}

RowLayout arms(const QString& title, int count)
{
    return {title, tr("lay out %1 arms").arg(count), [count](Setup& setup) {
                spreadArms(setup.airframe, count);
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
    return {tr("Lay out arms"),
            tr("Sets all arms at once, evenly around the craft, each like the first arm: same "
               "length, root radius and height. One step to undo."),
            tr("The arms stand like this already."),
            {arms(tr("&3 arms as a Y, foot backwards"), 3), arms(tr("&4 arms as an X"), 4),
             arms(tr("&6 arms evenly"), 6), arms(tr("&8 arms evenly"), 8)}};
}

RowLayouts tubeLayouts()
{
    return {
        tr("Mirror tubes"),
        tr("Mirrors the tubes on the side of tube 1 to the other side, in place of those that "
           "are there; tubes in the middle stay. One step to undo."),
        tr("The tubes are mirrored like this already."),
        {tubes(tr("&Left and right"), tr("mirror tubes left and right"), Mirror::LeftRight),
         tubes(tr("&Front and back"), tr("mirror tubes front and back"), Mirror::FrontBack),
         tubes(tr("&Both ways: one tube makes four"), tr("mirror tubes both ways"), Mirror::Both)}};
}

}  // namespace stillbay::ui
