<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>CompareTexts</name>
    <message>
        <source>%1°</source>
        <translation>%1°</translation>
    </message>
    <message>
        <source>%1&#xa0;%2</source>
        <translation>%1&#xa0;%2</translation>
    </message>
    <message>
        <source>…</source>
        <translation>…</translation>
    </message>
    <message>
        <source>no answer</source>
        <translation>kein Ergebnis</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>Tube</source>
        <translation>Schlauch</translation>
    </message>
    <message>
        <source>Free length</source>
        <translation>Freie Länge</translation>
    </message>
    <message>
        <source>%1&#xa0;mm</source>
        <translation>%1&#xa0;mm</translation>
    </message>
    <message>
        <source>Stretch</source>
        <translation>Dehnung</translation>
    </message>
    <message>
        <source>%1&#xa0;%</source>
        <translation>%1&#xa0;%</translation>
    </message>
    <message>
        <source>Elevation</source>
        <translation>Neigung</translation>
    </message>
    <message>
        <source>%1&#xa0;px</source>
        <translation>%1&#xa0;px</translation>
    </message>
    <message>
        <source>Worst in cruise, full pack</source>
        <translation>Größtes im Reiseflug, voller Akku</translation>
    </message>
    <message>
        <source>Worst in cruise, empty pack</source>
        <translation>Größtes im Reiseflug, leerer Akku</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Urteil</translation>
    </message>
    <message>
        <source>%1&#xa0;N</source>
        <translation>%1&#xa0;N</translation>
    </message>
    <message>
        <source>Tension, as fitted</source>
        <translation>Zugkraft, wie eingebaut</translation>
    </message>
    <message>
        <source>Least tension at rest</source>
        <translation>Kleinste Zugkraft in Ruhe</translation>
    </message>
    <message>
        <source>Bay leaves its drawn place by</source>
        <translation>Gondel verlässt gezeichnete Lage um</translation>
    </message>
    <message>
        <source>Mass of the bay</source>
        <translation>Masse der Gondel</translation>
    </message>
    <message>
        <source>%1&#xa0;g</source>
        <translation>%1&#xa0;g</translation>
    </message>
    <message>
        <source>Bench mode %1</source>
        <translation>Eigenschwingung %1 auf der Werkbank</translation>
    </message>
    <message>
        <source>%1&#xa0;Hz</source>
        <translation>%1&#xa0;Hz</translation>
    </message>
</context>
<context>
    <name>FieldSpec</name>
    <message>
        <source>from</source>
        <translation>von</translation>
    </message>
    <message>
        <source>to</source>
        <translation>bis</translation>
    </message>
</context>
<context>
    <name>FindTexts</name>
    <message>
        <source>%1 free length</source>
        <translation>%1 freie Länge</translation>
    </message>
    <message>
        <source>stretch %1</source>
        <translation>Dehnung %1</translation>
    </message>
    <message>
        <source>elevation %1</source>
        <translation>Neigung %1</translation>
    </message>
    <message>
        <source>tube %1</source>
        <translation>Schlauch %1</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>9 of 10 builds of it stay below %1 in cruise.</source>
        <translation>9 von 10 Nachbauten davon bleiben im Reiseflug unter %1.</translation>
    </message>
    <message>
        <source>Best as planned, but not as robust: %1; at most %2, and 9 of 10 builds stay below %3.</source>
        <translation>Nach Plan am besten, aber nicht so robust: %1; höchstens %2, und 9 von 10 Nachbauten bleiben unter %3.</translation>
    </message>
    <message>
        <source>Stay with the present tune: nothing found is more robust.</source>
        <translation>Bei der jetzigen Abstimmung bleiben: Gefunden wurde nichts Robusteres.</translation>
    </message>
    <message>
        <source>Take %1.</source>
        <translation>Nehmen: %1.</translation>
    </message>
    <message>
        <source>At most %1 in cruise from full to empty pack, instead of %2.</source>
        <translation>Im Reiseflug höchstens %1 vom vollen bis zum leeren Akku statt %2.</translation>
    </message>
    <message>
        <source>At most %1 in cruise from full to empty pack; as it is, %2.</source>
        <translation>Im Reiseflug höchstens %1 vom vollen bis zum leeren Akku; jetzt gilt: %2.</translation>
    </message>
    <message>
        <source>The present tune: at most %1 in cruise from full to empty pack.</source>
        <translation>Die jetzige Abstimmung: im Reiseflug höchstens %1 vom vollen bis zum leeren Akku.</translation>
    </message>
    <message>
        <source>The present tune is out of the question even as planned: %1.</source>
        <translation>Die jetzige Abstimmung scheidet schon nach Plan aus: %1.</translation>
    </message>
    <message>
        <source>nowhere</source>
        <translation>nirgends</translation>
    </message>
    <message>
        <source>%1&#xa0;% of its builds are out of the question: %2.</source>
        <translation>%1&#xa0;% der Nachbauten davon scheiden aus: %2.</translation>
    </message>
    <message>
        <source>— %1&#xa0;% of builds: %2</source>
        <translation>— %1&#xa0;% der Nachbauten: %2</translation>
    </message>
    <message>
        <source>%1&#xa0;% to %2&#xa0;%</source>
        <translation>%1&#xa0;% bis %2&#xa0;%</translation>
    </message>
    <message>
        <source>Best as planned, but not as robust: %1; at most %2, but of %3&#xa0;% of its builds %4.</source>
        <translation>Nach Plan am besten, aber nicht so robust: %1; höchstens %2, doch für %3&#xa0;% der Nachbauten gilt: %4.</translation>
    </message>
    <message>
        <source>%1 %2: %3</source>
        <translation>%1 %2: %3</translation>
    </message>
    <message>
        <source>One at a time from the present tune, worst wobble in cruise: %1.</source>
        <translation>Jede Größe für sich geändert, von der jetzigen Abstimmung aus, größtes Wackeln im Reiseflug: %1.</translation>
    </message>
    <message>
        <source>; </source>
        <translation>; </translation>
    </message>
    <message>
        <source>Builds differ in the cut of each tube by ±%1&#xa0;mm, in where it is by ±%9&#xa0;mm, in its direction by ±%10°, in hardness by ±%2 Shore (where the modulus was measured, by ±%3&#xa0;%), in the bay&apos;s mass by ±%4&#xa0;%, in the battery&apos;s by ±%5&#xa0;%, in temperature from %6 to %7&#xa0;°C, and in unbalance from 1/%8 to %8 times.</source>
        <translation>Die Nachbauten unterscheiden sich in der Schnittlänge jedes Schlauchs um ±%1&#xa0;mm, in seiner Lage um ±%9&#xa0;mm, in seiner Richtung um ±%10°, in der Härte um ±%2&#xa0;Shore (wo der Elastizitätsmodul gemessen wurde, um ±%3&#xa0;%), in der Masse der Gondel um ±%4&#xa0;%, in der des Akkus um ±%5&#xa0;%, in der Temperatur zwischen %6 und %7&#xa0;°C und in der Unwucht vom 1/%8-Fachen bis zum %8-Fachen.</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
</context>
<context>
    <name>HelpPages</name>
    <message>
        <source>command</source>
        <translation>Befehl</translation>
    </message>
    <message>
        <source>keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>Keyboard shortcuts</source>
        <translation>Tastenkürzel</translation>
    </message>
    <message>
        <source>Tab and Shift+Tab walk through all controls. Alt with the underlined letter opens a menu or goes to a control. In a number field and on a slider the arrow keys change the value by one step, Page Up and Page Down by ten. F1 in a field of the craft explains that field.</source>
        <translation>Tab und Umschalt+Tab gehen durch alle Bedienelemente. Alt mit dem unterstrichenen Buchstaben öffnet ein Menü oder springt zu einem Bedienelement. In einem Zahlenfeld und auf einem Schieberegler ändern die Pfeiltasten den Wert um einen Schritt, Bild auf und Bild ab um zehn. F1 in einem Feld des Kopters erklärt dieses Feld.</translation>
    </message>
    <message>
        <source>In parts of the window</source>
        <translation>In Teilen des Fensters</translation>
    </message>
</context>
<context>
    <name>MapTexts</name>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>Worst wobble in cruise, full pack (px)</source>
        <translation>Größtes Wackeln im Reiseflug, voller Akku (px)</translation>
    </message>
    <message>
        <source>Mean wobble in cruise (px)</source>
        <translation>Mittleres Wackeln im Reiseflug (px)</translation>
    </message>
    <message>
        <source>Worst wobble in cruise, full to empty (px)</source>
        <translation>Größtes Wackeln im Reiseflug, voll bis leer (px)</translation>
    </message>
    <message>
        <source>%1&#xa0;%</source>
        <translation>%1&#xa0;%</translation>
    </message>
    <message>
        <source>+%1&#xa0;%</source>
        <translation>+%1&#xa0;%</translation>
    </message>
    <message>
        <source>%1&#xa0;%2</source>
        <translation>%1&#xa0;%2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>not feasible: %1</source>
        <translation>nicht machbar: %1</translation>
    </message>
    <message>
        <source>Nothing here holds: most often %1.</source>
        <translation>Hier ist nichts machbar; meist gilt: %1.</translation>
    </message>
    <message>
        <source>%1 with a full pack, %2 with an empty one</source>
        <translation>%1 mit vollem, %2 mit leerem Akku</translation>
    </message>
    <message>
        <source>Best here: %1, %2.</source>
        <translation>Bestes hier: %1, %2.</translation>
    </message>
    <message>
        <source>%1 × %2</source>
        <translation>%1 × %2</translation>
    </message>
</context>
<context>
    <name>NewCraftGuide</name>
    <message>
        <source>Layout and arms</source>
        <translation>Anordnung und Ausleger</translation>
    </message>
    <message>
        <source>How the airframe is built: it decides how the arms ring.</source>
        <translation>Wie der Rahmen gebaut ist: Davon hängt ab, wie die Ausleger schwingen.</translation>
    </message>
    <message>
        <source>&amp;Layout</source>
        <translation>&amp;Anordnung</translation>
    </message>
    <message>
        <source>three arms as a Y</source>
        <translation>drei Ausleger als Y</translation>
    </message>
    <message>
        <source>four arms as an X</source>
        <translation>vier Ausleger als X</translation>
    </message>
    <message>
        <source>four arms as a plus</source>
        <translation>vier Ausleger als Plus</translation>
    </message>
    <message>
        <source>six arms evenly</source>
        <translation>sechs Ausleger gleichmäßig</translation>
    </message>
    <message>
        <source>eight arms evenly</source>
        <translation>acht Ausleger gleichmäßig</translation>
    </message>
    <message>
        <source>How the arms stand, seen from above.</source>
        <translation>Wie die Ausleger stehen, von oben gesehen.</translation>
    </message>
    <message>
        <source>&amp;Arm length</source>
        <translation>Ausleger&amp;länge</translation>
    </message>
    <message>
        <source>Arm ma&amp;terial</source>
        <translation>&amp;Material der Ausleger</translation>
    </message>
    <message>
        <source>What the arms are cut or drawn from.</source>
        <translation>Woraus die Ausleger geschnitten oder gezogen sind.</translation>
    </message>
    <message>
        <source>Arm &amp;width</source>
        <translation>Ausleger&amp;breite</translation>
    </message>
    <message>
        <source>Arm &amp;height</source>
        <translation>Ausleger&amp;höhe</translation>
    </message>
    <message>
        <source>Motors, propellers and pack</source>
        <translation>Motoren, Propeller und Akku</translation>
    </message>
    <message>
        <source>What excites the craft, and at which throttle.</source>
        <translation>Was den Kopter anregt, und bei welchem Gas.</translation>
    </message>
    <message>
        <source>Propeller &amp;diameter</source>
        <translation>Propeller&amp;durchmesser</translation>
    </message>
    <message>
        <source>&amp;Pitch</source>
        <translation>&amp;Steigung</translation>
    </message>
    <message>
        <source>B&amp;lades</source>
        <translation>&amp;Blätter</translation>
    </message>
    <message>
        <source>M&amp;otors</source>
        <translation>&amp;Motoren</translation>
    </message>
    <message>
        <source>The size class of the motors, by the diameter of the stator.</source>
        <translation>Die Größenklasse der Motoren, nach dem Durchmesser des Stators.</translation>
    </message>
    <message>
        <source>K&amp;V</source>
        <translation>K&amp;V</translation>
    </message>
    <message>
        <source>C&amp;ells in series</source>
        <translation>&amp;Zellen in Reihe</translation>
    </message>
    <message>
        <source>P&amp;ack</source>
        <translation>&amp;Akku</translation>
    </message>
    <message>
        <source>The pack that flies the craft; it hangs in the bay.</source>
        <translation>Der Akku für den Flug; er hängt in der Gondel.</translation>
    </message>
    <message>
        <source>What is in the bay</source>
        <translation>Was in der Gondel hängt</translation>
    </message>
    <message>
        <source>What hangs on the tubes: the pack, the camera and the tray that holds both.</source>
        <translation>Was an den Schläuchen hängt: Akku, Kamera und die Platte, die beide hält.</translation>
    </message>
    <message>
        <source>Bay &amp;weight</source>
        <translation>&amp;Gewicht der Gondel</translation>
    </message>
    <message>
        <source>&amp;Free travel</source>
        <translation>&amp;Freier Federweg</translation>
    </message>
    <message>
        <source>Camera</source>
        <translation>Kamera</translation>
    </message>
    <message>
        <source>What films: it decides how much of the vibration is seen.</source>
        <translation>Was filmt: Davon hängt ab, wie viel von den Schwingungen zu sehen ist.</translation>
    </message>
    <message>
        <source>C&amp;amera</source>
        <translation>K&amp;amera</translation>
    </message>
    <message>
        <source>The kind of camera.</source>
        <translation>Die Art der Kamera.</translation>
    </message>
    <message>
        <source>&amp;Frame rate</source>
        <translation>&amp;Bildrate</translation>
    </message>
    <message>
        <source>&amp;Exposure</source>
        <translation>B&amp;elichtungszeit</translation>
    </message>
    <message>
        <source>&amp;Tilt down</source>
        <translation>Blick nach &amp;unten</translation>
    </message>
    <message>
        <source>Tubes and where they hold</source>
        <translation>Schläuche und ihre Haltepunkte</translation>
    </message>
    <message>
        <source>Four tubes, hung level; unless you say otherwise they hold the bay at the height of its centre of mass, where a push turns it least.</source>
        <translation>Vier Schläuche, waagerecht aufgehängt; wenn nichts anderes angegeben ist, halten sie die Gondel auf der Höhe ihres Schwerpunkts, wo ein Stoß sie am wenigsten dreht.</translation>
    </message>
    <message>
        <source>&amp;Tube</source>
        <translation>&amp;Schlauch</translation>
    </message>
    <message>
        <source>Silicone tube as sold: outer diameter, bore, hardness.</source>
        <translation>Silikonschlauch, wie er verkauft wird: Außendurchmesser, Innendurchmesser, Härte.</translation>
    </message>
    <message>
        <source>&amp;Free length</source>
        <translation>&amp;Freie Länge</translation>
    </message>
    <message>
        <source>&amp;Stretch</source>
        <translation>&amp;Dehnung</translation>
    </message>
    <message>
        <source>&amp;Height of the bay points</source>
        <translation>&amp;Höhe der Gondelpunkte</translation>
    </message>
    <message>
        <source>Apart, fore and &amp;aft</source>
        <translation>Abstand &amp;längs</translation>
    </message>
    <message>
        <source>Apart, &amp;left and right</source>
        <translation>Abstand &amp;quer</translation>
    </message>
</context>
<context>
    <name>QObject</name>
    <message>
        <source>clean</source>
        <translation>sauber</translation>
    </message>
    <message>
        <source>faint</source>
        <translation>schwach</translation>
    </message>
    <message>
        <source>bad</source>
        <translation>stark</translation>
    </message>
    <message>
        <source>B</source>
        <comment>blade pass</comment>
        <translation>B</translation>
    </message>
    <message>
        <source>%1B</source>
        <comment>multiple of the blade pass</comment>
        <translation>%1B</translation>
    </message>
    <message>
        <source>&lt; %1 px</source>
        <comment>less than</comment>
        <translation>&lt; %1&#xa0;px</translation>
    </message>
    <message>
        <source>%1 px</source>
        <translation>%1&#xa0;px</translation>
    </message>
    <message>
        <source>%1, beats at %2 Hz</source>
        <comment>order</comment>
        <translation>%1, Schwebung %2&#xa0;Hz</translation>
    </message>
    <message>
        <source>At %1 % throttle: wobble %2 px, clean.</source>
        <translation>Bei %1&#xa0;% Gas: Wackeln %2&#xa0;px, sauber.</translation>
    </message>
    <message>
        <source>At %1 % throttle: wobble %2 px, faint.</source>
        <translation>Bei %1&#xa0;% Gas: Wackeln %2&#xa0;px, schwach.</translation>
    </message>
    <message>
        <source>At %1 % throttle: wobble %2 px, bad.</source>
        <translation>Bei %1&#xa0;% Gas: Wackeln %2&#xa0;px, stark.</translation>
    </message>
    <message>
        <source>Its strongest part swings at %1 Hz and beats against the %2 frames a second at %3 Hz.</source>
        <translation>Der stärkste Teil schwingt mit %1&#xa0;Hz; mit den %2 Bildern je Sekunde ergibt das eine Schwebung von %3&#xa0;Hz.</translation>
    </message>
    <message>
        <source>slack</source>
        <translation>schlaff</translation>
    </message>
    <message>
        <source>buckled</source>
        <translation>ausgeknickt</translation>
    </message>
    <message>
        <source>taut</source>
        <translation>straff</translation>
    </message>
    <message>
        <source>&lt;tr&gt;&lt;td&gt;Tube %1&amp;nbsp;&amp;nbsp;&lt;/td&gt;&lt;td align=&apos;right&apos;&gt;%2&amp;nbsp;N&amp;nbsp;&amp;nbsp;&lt;/td&gt;&lt;td align=&apos;right&apos;&gt;stretch %3&amp;nbsp;%&amp;nbsp;&amp;nbsp;&lt;/td&gt;&lt;td&gt;%4&lt;/td&gt;&lt;/tr&gt;</source>
        <translation>&lt;tr&gt;&lt;td&gt;Schlauch %1&amp;nbsp;&amp;nbsp;&lt;/td&gt;&lt;td align=&apos;right&apos;&gt;%2&amp;nbsp;N&amp;nbsp;&amp;nbsp;&lt;/td&gt;&lt;td align=&apos;right&apos;&gt;Dehnung %3&amp;nbsp;%&amp;nbsp;&amp;nbsp;&lt;/td&gt;&lt;td&gt;%4&lt;/td&gt;&lt;/tr&gt;</translation>
    </message>
    <message>
        <source>Cruise is %1 to %2 % throttle; faint from %3 px, bad from %4 px.</source>
        <translation>Reiseflug: %1 bis %2&#xa0;% Gas; schwach ab %3&#xa0;px, stark ab %4&#xa0;px.</translation>
    </message>
    <message>
        <source>−%1 %</source>
        <translation>−%1&#xa0;%</translation>
    </message>
    <message>
        <source>Click, or press Enter, to take this step; undo takes it back.</source>
        <translation>Klicken oder Eingabe drücken, um diesen Schritt zu übernehmen; Rückgängig nimmt ihn zurück.</translation>
    </message>
    <message>
        <source>%1 → %2 px</source>
        <translation>%1 → %2&#xa0;px</translation>
    </message>
    <message>
        <source>but %1</source>
        <translation>aber %1</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>%1 mm</source>
        <translation>%1&#xa0;mm</translation>
    </message>
    <message>
        <source>Unnamed craft</source>
        <translation>Unbenannter Kopter</translation>
    </message>
    <message>
        <source>page %1 of %2</source>
        <translation>Seite %1 von %2</translation>
    </message>
    <message>
        <source>Stillbay build sheet · %1 · %2</source>
        <translation>Stillbay-Baublatt · %1 · %2</translation>
    </message>
    <message>
        <source>%1 build sheet.pdf</source>
        <comment>file name</comment>
        <translation>%1 Baublatt.pdf</translation>
    </message>
    <message>
        <source>Build sheet: %1</source>
        <translation>Baublatt: %1</translation>
    </message>
    <message>
        <source>Drilling template, seen from above. Print at 100 %, not fitted to the page. Measure both rulers before you drill.</source>
        <translation>Bohrschablone, von oben gesehen. Mit 100&#xa0;% drucken, nicht an die Seite angepasst. Vor dem Bohren beide Lineale nachmessen.</translation>
    </message>
    <message>
        <source>Row %1, column %2 of %3 × %4 sheets.</source>
        <translation>Reihe %1, Spalte %2 von %3 × %4 Bögen.</translation>
    </message>
    <message>
        <source>A%1</source>
        <comment>hole in the airframe</comment>
        <translation>A%1</translation>
    </message>
    <message>
        <source>B%1</source>
        <comment>hole in the bay</comment>
        <translation>B%1</translation>
    </message>
    <message>
        <source>holes in the airframe</source>
        <translation>Bohrungen im Rahmen</translation>
    </message>
    <message>
        <source>holes in the bay</source>
        <translation>Bohrungen in der Gondel</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>1, 2…</source>
        <translation>1, 2…</translation>
    </message>
    <message>
        <source>forward</source>
        <translation>vorn</translation>
    </message>
    <message>
        <source>datum: middle of the centre plate</source>
        <translation>Nullpunkt: Mitte der Mittelplatte</translation>
    </message>
    <message>
        <source>joint %1</source>
        <comment>where two sheets of paper overlap</comment>
        <translation>Passkreuz %1</translation>
    </message>
    <message>
        <source>Cut the tubes</source>
        <translation>Schläuche schneiden</translation>
    </message>
    <message>
        <source>Pieces</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>Outer diameter</source>
        <translation>Außendurchmesser</translation>
    </message>
    <message>
        <source>Bore</source>
        <translation>Innendurchmesser</translation>
    </message>
    <message>
        <source>Hardness</source>
        <translation>Härte</translation>
    </message>
    <message>
        <source>Free length</source>
        <translation>Freie Länge</translation>
    </message>
    <message>
        <source>In the clamp, each end</source>
        <translation>In der Klemme, je Ende</translation>
    </message>
    <message>
        <source>CUT LENGTH</source>
        <translation>SCHNITTLÄNGE</translation>
    </message>
    <message>
        <source>%1 Shore A</source>
        <translation>%1&#xa0;Shore&#xa0;A</translation>
    </message>
    <message>
        <source>Cut the ends square. Mark each tube where its clamps end: the free length lies between the two marks.</source>
        <translation>Die Enden rechtwinklig schneiden. Jeden Schlauch dort anzeichnen, wo seine Klemmen enden: Die freie Länge liegt zwischen den zwei Strichen.</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1&#xa0;%</translation>
    </message>
    <message>
        <source>%1°</source>
        <translation>%1°</translation>
    </message>
    <message>
        <source>Fit the tubes</source>
        <translation>Schläuche einbauen</translation>
    </message>
    <message>
        <source>Tube</source>
        <translation>Schlauch</translation>
    </message>
    <message>
        <source>Fitted, clamp to clamp</source>
        <translation>Eingebaut, Klemme zu Klemme</translation>
    </message>
    <message>
        <source>Stretch</source>
        <translation>Dehnung</translation>
    </message>
    <message>
        <source>Direction</source>
        <translation>Richtung</translation>
    </message>
    <message>
        <source>Elevation</source>
        <translation>Neigung</translation>
    </message>
    <message>
        <source>Direction: from the bay to the airframe, seen from above, 0° forward, 90° left. Elevation: above level. %1</source>
        <translation>Richtung: von der Gondel zum Rahmen, von oben gesehen, 0° vorn, 90° links. Neigung: über der Waagerechten. %1</translation>
    </message>
    <message>
        <source>Both ends are clamped square to the tube.</source>
        <translation>Beide Enden sind rechtwinklig zum Schlauch geklemmt.</translation>
    </message>
    <message>
        <source>Both ends turn freely, as on a ball or a cord.</source>
        <translation>Beide Enden drehen sich frei, wie an einer Kugel oder Schnur.</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>up</source>
        <translation>oben</translation>
    </message>
    <message>
        <source>Holes as drilled (mm)</source>
        <translation>Vorhandene Bohrungen (mm)</translation>
    </message>
    <message>
        <source>Drill the holes (mm)</source>
        <translation>Bohrungen setzen (mm)</translation>
    </message>
    <message>
        <source>A airframe: %1</source>
        <translation>A Rahmen: %1</translation>
    </message>
    <message>
        <source>B bay: %1</source>
        <translation>B Gondel: %1</translation>
    </message>
    <message>
        <source>Measured from the datum, the middle of the airframe&apos;s centre plate, with the bay held as drawn. Each point is where a clamp ends and the free part of the tube begins; a minus means back, right or down.</source>
        <translation>Gemessen vom Nullpunkt, der Mitte der Mittelplatte des Rahmens, bei gezeichneter Lage der Gondel. Jeder Punkt liegt dort, wo eine Klemme endet und der freie Teil des Schlauchs beginnt; ein Minus heißt hinten, rechts oder unten.</translation>
    </message>
    <message>
        <source>Sheets of the drilling template, at true size, at the end: %1.</source>
        <translation>Bögen der Bohrschablone in wahrer Größe am Ende: %1.</translation>
    </message>
    <message>
        <source>The holes lie too far apart for a template on this paper: drill by the table.</source>
        <translation>Die Bohrungen liegen für eine Schablone auf diesem Papier zu weit auseinander: nach der Tabelle bohren.</translation>
    </message>
    <message>
        <source>%1 to %2 %</source>
        <translation>%1 bis %2&#xa0;%</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keiner</translation>
    </message>
    <message>
        <source>the pack cannot hold the craft</source>
        <translation>der Akku reicht nicht zum Schweben</translation>
    </message>
    <message>
        <source>%1 % on a full pack; an empty one cannot hold the craft</source>
        <translation>%1&#xa0;% mit vollem Akku; ein leerer reicht nicht zum Schweben</translation>
    </message>
    <message>
        <source>%1 % on a full pack, %2 % on an empty one, %3 rpm</source>
        <translation>%1&#xa0;% mit vollem Akku, %2&#xa0;% mit leerem, %3&#xa0;U/min</translation>
    </message>
    <message>
        <source>Motors</source>
        <translation>Motoren</translation>
    </message>
    <message>
        <source>%1 × %2 rpm/V</source>
        <translation>%1 × %2&#xa0;U/min/V</translation>
    </message>
    <message>
        <source>Propellers</source>
        <translation>Propeller</translation>
    </message>
    <message>
        <source>%1 × %2 in, blades: %3</source>
        <translation>%1 × %2&#xa0;Zoll, Blätter: %3</translation>
    </message>
    <message>
        <source>Cells of the pack</source>
        <translation>Zellen des Akkus</translation>
    </message>
    <message>
        <source>Bay, all that is on the tubes</source>
        <translation>Gondel, alles, was an den Schläuchen hängt</translation>
    </message>
    <message>
        <source>%1 g</source>
        <translation>%1&#xa0;g</translation>
    </message>
    <message>
        <source>Camera</source>
        <translation>Kamera</translation>
    </message>
    <message>
        <source>%1 × %2 px, %3 frames/s, %4° wide, exposure %5 ms</source>
        <translation>%1 × %2&#xa0;px, %3&#xa0;Bilder/s, Bildwinkel %4°, Belichtungszeit %5&#xa0;ms</translation>
    </message>
    <message>
        <source>Cruise window</source>
        <translation>Reiseflugbereich</translation>
    </message>
    <message>
        <source>%1 throttle</source>
        <translation>%1 Gas</translation>
    </message>
    <message>
        <source>Worst wobble in cruise</source>
        <translation>Größtes Wackeln im Reiseflug</translation>
    </message>
    <message>
        <source>%1 px (%2)</source>
        <translation>%1&#xa0;px (%2)</translation>
    </message>
    <message>
        <source>Clean throttle</source>
        <translation>Sauberer Gasbereich</translation>
    </message>
    <message>
        <source>Hover</source>
        <translation>Schweben</translation>
    </message>
    <message>
        <source>Tuned for</source>
        <translation>Abgestimmt für</translation>
    </message>
    <message>
        <source>Warnings</source>
        <translation>Warnungen</translation>
    </message>
    <message>
        <source>Before you fly</source>
        <translation>Vor dem Flug</translation>
    </message>
    <message>
        <source>cruise</source>
        <translation>Reiseflug</translation>
    </message>
    <message>
        <source>Throttle (%)</source>
        <translation>Gas (%)</translation>
    </message>
    <message>
        <source>Wobble (px rms)</source>
        <translation>Wackeln (px&#xa0;eff.)</translation>
    </message>
    <message>
        <source>hover, full pack %1 %</source>
        <translation>Schweben, Akku voll %1&#xa0;%</translation>
    </message>
    <message>
        <source>hover, empty pack %1 %</source>
        <translation>Schweben, Akku leer %1&#xa0;%</translation>
    </message>
    <message>
        <source>%1 (at %2)</source>
        <translation>%1 (bei %2)</translation>
    </message>
    <message>
        <source>Stillbay crafts (*.stillbay)</source>
        <translation>Stillbay-Kopter (*.stillbay)</translation>
    </message>
    <message>
        <source>%1 %</source>
        <comment>throttle</comment>
        <translation>%1&#xa0;%</translation>
    </message>
    <message>
        <source>cruise %1 to %2 %</source>
        <translation>Reiseflug %1 bis %2&#xa0;%</translation>
    </message>
    <message>
        <source>Mounts: how the tube ends are held</source>
        <translation>Aufhängung: wie die Schlauchenden gehalten sind</translation>
    </message>
    <message>
        <source>&lt;p&gt;Clamped ends sit tight in a collar or over a peg and cannot turn; hinged ends hang on a ring or a pin and turn freely.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Geklemmte Enden sitzen fest in einer Hülse oder auf einem Zapfen und können sich nicht drehen; gelenkige hängen an einem Ring oder Stift und drehen sich frei.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Ends clamped, held square</source>
        <translation>Enden geklemmt, rechtwinklig</translation>
    </message>
    <message>
        <source>Ends hinged, free to turn</source>
        <translation>Enden gelenkig, frei drehend</translation>
    </message>
    <message>
        <source>change how the ends are held</source>
        <translation>Halt der Enden ändern</translation>
    </message>
    <message>
        <source>Mounts: planned or drilled</source>
        <translation>Aufhängung: geplant oder gebohrt</translation>
    </message>
    <message>
        <source>&lt;p&gt;While planning, the anchor lies along the angles at free length × stretch. Once drilled, the holes stay and decide each tube&apos;s stretch.&lt;/p&gt;</source>
        <translation>&lt;p&gt;In der Planung ergeben die Winkel mit freier Länge × Dehnung, wo die Bohrung im Rahmen liegt. Sobald gebohrt ist, bleiben die Bohrungen und bestimmen die Dehnung jedes Schlauchs.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Planned: anchors follow the angles</source>
        <translation>Geplant: Bohrungen folgen den Winkeln</translation>
    </message>
    <message>
        <source>Drilled: the holes stay</source>
        <translation>Gebohrt: die Bohrungen bleiben</translation>
    </message>
    <message>
        <source>drill the holes</source>
        <translation>Bohrungen setzen</translation>
    </message>
    <message>
        <source>plan by angles</source>
        <translation>nach Winkeln planen</translation>
    </message>
    <message>
        <source>1 part, %1 g</source>
        <translation>1 Teil, %1&#xa0;g</translation>
    </message>
    <message>
        <source>%1 parts, %2 g</source>
        <translation>%1 Teile, %2&#xa0;g</translation>
    </message>
    <message>
        <source>%1 rpm/V, %2 g</source>
        <translation>%1&#xa0;U/min/V, %2&#xa0;g</translation>
    </message>
    <message>
        <source>%1 × %2 in, %3 blades</source>
        <translation>%1 × %2&#xa0;Zoll, %3 Blätter</translation>
    </message>
    <message>
        <source>%1 cells, %2 V full</source>
        <translation>%1 Zellen, voll %2&#xa0;V</translation>
    </message>
    <message>
        <source>%1 × %2 px, %3 Hz</source>
        <translation>%1 × %2&#xa0;px, %3&#xa0;Hz</translation>
    </message>
    <message>
        <source>%1 / %2 mm, %3 Shore A</source>
        <translation>%1 / %2&#xa0;mm, %3&#xa0;Shore&#xa0;A</translation>
    </message>
    <message>
        <source>%1 tubes, %2 mm, %3 % stretch</source>
        <translation>%1 Schläuche, %2&#xa0;mm, %3&#xa0;% Dehnung</translation>
    </message>
    <message>
        <source>%1 and %2 px</source>
        <translation>%1 und %2&#xa0;px</translation>
    </message>
    <message>
        <source>solid</source>
        <translation>massiv</translation>
    </message>
    <message>
        <source>rigid</source>
        <translation>starr</translation>
    </message>
    <message>
        <source>estimated</source>
        <translation>geschätzt</translation>
    </message>
    <message>
        <source>from hardness</source>
        <translation>aus der Härte</translation>
    </message>
    <message>
        <source>lay out %1 arms</source>
        <translation>%1 Ausleger anordnen</translation>
    </message>
    <message>
        <source>Lay out arms</source>
        <translation>Ausleger anordnen</translation>
    </message>
    <message>
        <source>Sets all arms at once, evenly around the craft, each like the first arm: same length, root radius and height. One step to undo.</source>
        <translation>Setzt alle Ausleger auf einmal, gleichmäßig rund um den Kopter, jeder wie der erste: gleiche Länge, gleicher Fußradius, gleiche Höhe. In einem Schritt rückgängig zu machen.</translation>
    </message>
    <message>
        <source>The arms stand like this already.</source>
        <translation>Die Ausleger stehen schon so.</translation>
    </message>
    <message>
        <source>&amp;3 arms as a Y, foot backwards</source>
        <translation>&amp;3 Ausleger als Y, einer hinten</translation>
    </message>
    <message>
        <source>&amp;4 arms as an X</source>
        <translation>&amp;4 Ausleger als X</translation>
    </message>
    <message>
        <source>&amp;6 arms evenly</source>
        <translation>&amp;6 Ausleger gleichmäßig</translation>
    </message>
    <message>
        <source>&amp;8 arms evenly</source>
        <translation>&amp;8 Ausleger gleichmäßig</translation>
    </message>
    <message>
        <source>Mirror tubes</source>
        <translation>Schläuche spiegeln</translation>
    </message>
    <message>
        <source>Mirrors the tubes on the side of tube 1 to the other side, in place of those that are there; tubes in the middle stay. One step to undo.</source>
        <translation>Spiegelt die Schläuche auf der Seite von Schlauch 1 auf die andere, statt derer, die dort sind; Schläuche in der Mitte bleiben. In einem Schritt rückgängig zu machen.</translation>
    </message>
    <message>
        <source>The tubes are mirrored like this already.</source>
        <translation>Die Schläuche sind schon so gespiegelt.</translation>
    </message>
    <message>
        <source>&amp;Left and right</source>
        <translation>&amp;Links und rechts</translation>
    </message>
    <message>
        <source>mirror tubes left and right</source>
        <translation>Schläuche links und rechts spiegeln</translation>
    </message>
    <message>
        <source>&amp;Front and back</source>
        <translation>&amp;Vorn und hinten</translation>
    </message>
    <message>
        <source>mirror tubes front and back</source>
        <translation>Schläuche vorn und hinten spiegeln</translation>
    </message>
    <message>
        <source>&amp;Both ways: one tube makes four</source>
        <translation>&amp;Beides: aus einem Schlauch werden vier</translation>
    </message>
    <message>
        <source>mirror tubes both ways</source>
        <translation>Schläuche in beide Richtungen spiegeln</translation>
    </message>
    <message>
        <source>What you call this part.</source>
        <translation>Frei gewählter Name dieses Teils.</translation>
    </message>
    <message>
        <source>%1: name</source>
        <translation>%1: Name</translation>
    </message>
    <message>
        <source>new part</source>
        <translation>neues Teil</translation>
    </message>
    <message>
        <source>airframe part</source>
        <translation>Rahmenteil</translation>
    </message>
    <message>
        <source>bay part</source>
        <translation>Gondelteil</translation>
    </message>
    <message>
        <source>arm</source>
        <translation>Ausleger</translation>
    </message>
    <message>
        <source>tube</source>
        <translation>Schlauch</translation>
    </message>
    <message>
        <source>%1 × %2&#xa0;mm, Shore %3</source>
        <translation>%1 × %2&#xa0;mm, Shore %3</translation>
    </message>
    <message>
        <source>%1&#xa0;mm</source>
        <translation>%1&#xa0;mm</translation>
    </message>
    <message>
        <source>−%1&#xa0;%</source>
        <translation>−%1&#xa0;%</translation>
    </message>
    <message>
        <source>+%1&#xa0;%</source>
        <translation>+%1&#xa0;%</translation>
    </message>
    <message>
        <source>%1&#xa0;px</source>
        <translation>%1&#xa0;px</translation>
    </message>
    <message>
        <source>Camera: kind of lens</source>
        <translation>Kamera: Art des Objektivs</translation>
    </message>
    <message>
        <source>&lt;p&gt;A rectilinear lens keeps straight lines straight; a fisheye bends them towards the edges and sees further. It decides how many pixels a turn of the camera moves the picture.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Ein geradlinig abbildendes Objektiv lässt gerade Linien gerade; ein Fischauge krümmt sie zum Rand hin und erfasst mehr. Davon hängt ab, um wie viele Pixel eine Drehung der Kamera das Bild verschiebt.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Lens rectilinear, straight lines stay straight</source>
        <translation>Objektiv geradlinig: gerade Linien bleiben gerade</translation>
    </message>
    <message>
        <source>Lens fisheye (equidistant)</source>
        <translation>Objektiv Fischauge (äquidistant)</translation>
    </message>
    <message>
        <source>change the lens</source>
        <translation>Objektiv ändern</translation>
    </message>
    <message>
        <source>as the motor</source>
        <translation>wie der Motor</translation>
    </message>
    <message>
        <source>as the others</source>
        <translation>wie die anderen</translation>
    </message>
    <message>
        <source>Modes in flight</source>
        <translation>Eigenschwingungen im Flug</translation>
    </message>
    <message>
        <source>Modes on the bench, airframe held</source>
        <translation>Eigenschwingungen auf der Werkbank, Rahmen festgehalten</translation>
    </message>
    <message>
        <source>At rest</source>
        <translation>In Ruhelage</translation>
    </message>
    <message>
        <source>Before bench work and flight</source>
        <translation>Vor Arbeiten an der Werkbank und vor dem Flug</translation>
    </message>
    <message>
        <source>surge</source>
        <comment>narrow column</comment>
        <translation>längs</translation>
    </message>
    <message>
        <source>sway</source>
        <comment>narrow column</comment>
        <translation>quer</translation>
    </message>
    <message>
        <source>heave</source>
        <comment>narrow column</comment>
        <translation>Hub</translation>
    </message>
    <message>
        <source>roll</source>
        <comment>narrow column</comment>
        <translation>Roll</translation>
    </message>
    <message>
        <source>pitch</source>
        <comment>narrow column</comment>
        <translation>Nick</translation>
    </message>
    <message>
        <source>yaw</source>
        <comment>narrow column</comment>
        <translation>Gier</translation>
    </message>
    <message>
        <source>Why the bay turns</source>
        <translation>Warum sich die Gondel dreht</translation>
    </message>
    <message>
        <source>Energy of the bench modes by motion, %:</source>
        <translation>Energie der Eigenschwingungen auf der Werkbank nach Bewegung, %:</translation>
    </message>
    <message>
        <source>Mass of all parts</source>
        <translation>Masse aller Teile</translation>
    </message>
    <message>
        <source>Bay: mass of all parts</source>
        <translation>Gondel: Masse aller Teile</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>What the bay weighs with everything in it. Put it on the scale whole and type what it says: the masses of its parts are scaled together, one step to undo.</source>
        <translation>Was die Gondel mit allem darin wiegt. Ganz auf die Waage legen und eintippen, was sie zeigt: Die Massen der Teile werden gemeinsam angepasst, in einem Schritt rückgängig zu machen.</translation>
    </message>
    <message>
        <source>%1 arms, %2 × %3 mm</source>
        <translation>%1 Ausleger, %2 × %3&#xa0;mm</translation>
    </message>
    <message>
        <source>1 cell, %1 V full</source>
        <translation>1 Zelle, %1&#xa0;V voll</translation>
    </message>
    <message>
        <source>1 tube, %1 mm, %2 % stretch</source>
        <translation>1 Schlauch, %1&#xa0;mm, %2&#xa0;% Dehnung</translation>
    </message>
    <message>
        <source>4 arms as a &amp;plus</source>
        <translation>4 Ausleger als &amp;Plus</translation>
    </message>
    <message>
        <source>may fly then</source>
        <translation>darf dann fliegen</translation>
    </message>
    <message>
        <source>it still must not fly</source>
        <translation>er darf auch dann nicht fliegen</translation>
    </message>
    <message>
        <source>No warnings</source>
        <translation>Keine Warnungen</translation>
    </message>
    <message>
        <source>1 warning</source>
        <translation>1 Warnung</translation>
    </message>
    <message>
        <source>%1 warnings</source>
        <translation>%1 Warnungen</translation>
    </message>
    <message>
        <source>Not about this flight</source>
        <translation>Nicht über diesen Flug</translation>
    </message>
    <message>
        <source>Do not fly</source>
        <translation>Nicht fliegen</translation>
    </message>
    <message>
        <source>To watch out for</source>
        <translation>Zu beachten</translation>
    </message>
    <message>
        <source>No warnings for this craft.</source>
        <translation>Keine Warnungen zu diesem Kopter.</translation>
    </message>
    <message>
        <source>small</source>
        <comment>labels inside a sentence: small or as they are</comment>
        <translation>as they are</translation>
    </message>
    <message>
        <source>A typical value, not yours yet: type it, or your own.</source>
        <translation>Ein typischer Wert, noch kein eigener: diesen oder den eigenen eintippen.</translation>
    </message>
    <message>
        <source>An estimate, not yours yet: type it, or your own.</source>
        <translation>Eine Schätzung, noch kein eigener Wert: diese oder den eigenen eintippen.</translation>
    </message>
    <message>
        <source>Read off a label or a data sheet.</source>
        <translation>Von einem Aufdruck oder Datenblatt abgelesen.</translation>
    </message>
    <message>
        <source>Measured.</source>
        <translation>Gemessen.</translation>
    </message>
    <message>
        <source>typical</source>
        <translation>typisch</translation>
    </message>
    <message>
        <source>From: %1</source>
        <translation>Quelle: %1</translation>
    </message>
    <message>
        <source>Such values differ by %1.</source>
        <translation>Solche Werte weichen um %1 voneinander ab.</translation>
    </message>
    <message>
        <source>±%1&#xa0;%</source>
        <translation>±%1&#xa0;%</translation>
    </message>
    <message>
        <source>Show</source>
        <translation>Zeigen</translation>
    </message>
    <message>
        <source>Show %1</source>
        <translation>%1 zeigen</translation>
    </message>
    <message>
        <source>Material of the arms</source>
        <translation>Material der Ausleger</translation>
    </message>
    <message>
        <source>take a preset for the arms</source>
        <translation>Vorlage für die Ausleger nehmen</translation>
    </message>
    <message>
        <source>Class of motor</source>
        <translation>Klasse des Motors</translation>
    </message>
    <message>
        <source>take a preset for the motors</source>
        <translation>Vorlage für die Motoren nehmen</translation>
    </message>
    <message>
        <source>Kind of propeller</source>
        <translation>Art des Propellers</translation>
    </message>
    <message>
        <source>take a preset for the propellers</source>
        <translation>Vorlage für die Propeller nehmen</translation>
    </message>
    <message>
        <source>Kind of battery</source>
        <translation>Art des Akkus</translation>
    </message>
    <message>
        <source>take a preset for the battery</source>
        <translation>Vorlage für den Akku nehmen</translation>
    </message>
    <message>
        <source>Kind of camera</source>
        <translation>Art der Kamera</translation>
    </message>
    <message>
        <source>take a preset for the camera</source>
        <translation>Vorlage für die Kamera nehmen</translation>
    </message>
    <message>
        <source>Tube as sold</source>
        <translation>Schlauch wie verkauft</translation>
    </message>
    <message>
        <source>take a preset for the tube</source>
        <translation>Vorlage für den Schlauch nehmen</translation>
    </message>
    <message>
        <source>Keep as preset</source>
        <translation>Als Vorlage merken</translation>
    </message>
    <message>
        <source>Name of the preset</source>
        <translation>Name der Vorlage</translation>
    </message>
    <message>
        <source>The list of presets shows it above the built-in ones.</source>
        <translation>Die Liste der Vorlagen zeigt sie über den eingebauten.</translation>
    </message>
    <message>
        <source>&amp;Keep</source>
        <translation>&amp;Merken</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Replaces the preset you kept under this name.</source>
        <translation>Ersetzt die Vorlage, die unter diesem Namen gemerkt ist.</translation>
    </message>
    <message>
        <source>The numbers of this section as they are now, for this and other crafts.</source>
        <translation>Die Zahlen dieses Abschnitts, wie sie jetzt sind, für diesen und andere Kopter.</translation>
    </message>
    <message>
        <source>Such motors are wound for %1 to %2 rpm/V.</source>
        <translation>Solche Motoren werden für %1 bis %2&#xa0;U/min/V gewickelt.</translation>
    </message>
    <message>
        <source>%1 (yours)</source>
        <translation>%1 (eigene)</translation>
    </message>
    <message>
        <source>Kept by you.</source>
        <translation>Selbst gemerkt.</translation>
    </message>
    <message>
        <source>Rotor speed (rpm)</source>
        <translation>Rotordrehzahl (U/min)</translation>
    </message>
    <message>
        <source>Order %1: frequency (Hz)</source>
        <translation>Ordnung %1: Frequenz (Hz)</translation>
    </message>
    <message>
        <source>Order %1: wobble (px)</source>
        <translation>Ordnung %1: Wackeln (px)</translation>
    </message>
    <message>
        <source>DO NOT FLY · Stillbay build sheet · %1 · %2</source>
        <translation>NICHT FLIEGEN · Stillbay-Baublatt · %1 · %2</translation>
    </message>
    <message>
        <source>The heaviest part of the bay (%1) sits with its middle at %2 / %3 / %4. Keep it there: a few millimetres beside, and the bay turns more.</source>
        <translation>Das schwerste Teil der Gondel (%1) sitzt mit seiner Mitte bei %2 / %3 / %4. Dort lassen: einige Millimeter daneben, und die Gondel dreht stärker.</translation>
    </message>
    <message>
        <source>none: the craft must not fly</source>
        <translation>keiner: der Kopter darf nicht fliegen</translation>
    </message>
    <message>
        <source>%1 px, if it could be flown</source>
        <translation>%1&#xa0;px, wenn er fliegen dürfte</translation>
    </message>
    <message>
        <source>What is said of cruise is not about this flight: %1.</source>
        <translation>Was zum Reiseflug gesagt ist, gilt nicht für diesen Flug: %1.</translation>
    </message>
    <message>
        <source>DO NOT FLY: %1. Mend the craft before you cut or drill.</source>
        <translation>NICHT FLIEGEN: %1. Vor dem Schneiden und Bohren den Kopter in Ordnung bringen.</translation>
    </message>
    <message>
        <source>seen clean</source>
        <translation>gesehen: sauber</translation>
    </message>
    <message>
        <source>seen faint</source>
        <translation>gesehen: schwach</translation>
    </message>
    <message>
        <source>seen bad</source>
        <translation>gesehen: stark</translation>
    </message>
    <message>
        <source>unbalance %1&#xa0;g·mm</source>
        <translation>Unwucht %1&#xa0;g·mm</translation>
    </message>
    <message>
        <source>unbalance %1 to %2&#xa0;g·mm</source>
        <translation>Unwucht %1 bis %2&#xa0;g·mm</translation>
    </message>
    <message>
        <source>%1 → %2&#xa0;%</source>
        <translation>%1 → %2&#xa0;%</translation>
    </message>
    <message>
        <source>Throttle curve, throttle → duty: %1</source>
        <translation>Gaskurve, Gas → Tastgrad: %1</translation>
    </message>
    <message>
        <source>Remove the throttle curve</source>
        <translation>Gaskurve entfernen</translation>
    </message>
    <message>
        <source>The duty is the throttle again, at every throttle.</source>
        <translation>Der Tastgrad ist wieder das Gas, bei jedem Gas.</translation>
    </message>
    <message>
        <source>remove the throttle curve</source>
        <translation>Gaskurve entfernen</translation>
    </message>
    <message>
        <source>Decay</source>
        <translation>Abklingen</translation>
    </message>
    <message>
        <source>%1, measured</source>
        <translation>%1, gemessen</translation>
    </message>
    <message>
        <source>the decaying modes together</source>
        <translation>die abklingenden Eigenschwingungen zusammen</translation>
    </message>
    <message>
        <source>Time (s)</source>
        <translation>Zeit (s)</translation>
    </message>
    <message>
        <source>%1 after the first pluck, and the decaying modes through it.</source>
        <translation>%1 nach dem ersten Zupfen, dazu die abklingenden Eigenschwingungen.</translation>
    </message>
    <message>
        <source>rings at (Hz):</source>
        <translation>schwingt bei (Hz):</translation>
    </message>
    <message>
        <source>%1 Hz: loss factor %2 ± %3</source>
        <translation>%1&#xa0;Hz: Verlustfaktor %2 ± %3</translation>
    </message>
    <message>
        <source>predicted (Hz):</source>
        <translation>vorhergesagt (Hz):</translation>
    </message>
    <message>
        <source>The bay rings at %1 Hz; predicted are %2 Hz.</source>
        <translation>Die Gondel schwingt bei %1&#xa0;Hz; vorhergesagt sind %2&#xa0;Hz.</translation>
    </message>
    <message>
        <source>The sensor&apos;s axes are not understood, and not used.</source>
        <translation>Die Achsen des Sensors werden nicht verstanden und nicht benutzt.</translation>
    </message>
    <message>
        <source>It corrects nothing: %1.</source>
        <translation>Sie korrigiert nichts: %1.</translation>
    </message>
    <message>
        <source>The bay rings at %1 Hz.</source>
        <translation>Die Gondel schwingt bei %1&#xa0;Hz.</translation>
    </message>
    <message>
        <source>The arm rings at %1 Hz.</source>
        <translation>Der Ausleger schwingt bei %1&#xa0;Hz.</translation>
    </message>
    <message>
        <source>The arm rings at %1 Hz; predicted are %2 Hz, up and down and sideways.</source>
        <translation>Der Ausleger schwingt bei %1&#xa0;Hz; vorhergesagt sind %2&#xa0;Hz, auf und ab und seitwärts.</translation>
    </message>
    <message>
        <source>Spectrum</source>
        <translation>Spektrum</translation>
    </message>
    <message>
        <source>Frequency (Hz)</source>
        <translation>Frequenz (Hz)</translation>
    </message>
    <message>
        <source>Density (1/Hz)</source>
        <translation>Dichte (1/Hz)</translation>
    </message>
    <message>
        <source>Density ((%1)²/Hz)</source>
        <translation>Dichte ((%1)²/Hz)</translation>
    </message>
    <message>
        <source>%1 is strongest at %2 Hz</source>
        <translation>%1 ist bei %2&#xa0;Hz am stärksten</translation>
    </message>
    <message>
        <source>%1.</source>
        <translation>%1.</translation>
    </message>
    <message>
        <source>Good</source>
        <comment>quality of a measurement</comment>
        <translation>Gut</translation>
    </message>
    <message>
        <source>Fair</source>
        <comment>quality of a measurement</comment>
        <translation>Brauchbar</translation>
    </message>
    <message>
        <source>Poor</source>
        <comment>quality of a measurement</comment>
        <translation>Schlecht</translation>
    </message>
    <message>
        <source>Pluck</source>
        <comment>kind of recording</comment>
        <translation>Zupfen</translation>
    </message>
    <message>
        <source>Tap</source>
        <comment>kind of recording</comment>
        <translation>Klopfen</translation>
    </message>
    <message>
        <source>Sweep</source>
        <comment>kind of recording</comment>
        <translation>Durchlauf</translation>
    </message>
    <message>
        <source>Sound</source>
        <comment>kind of recording</comment>
        <translation>Ton</translation>
    </message>
    <message>
        <source>Film</source>
        <comment>kind of recording</comment>
        <translation>Film</translation>
    </message>
    <message>
        <source>The bay plucked on the bench, airframe held, with a sensor on it.</source>
        <translation>Die Gondel auf der Werkbank angezupft, Rahmen festgehalten, mit einem Sensor darauf.</translation>
    </message>
    <message>
        <source>An arm tapped at its tip, with a sensor or a microphone at it.</source>
        <translation>Ein Ausleger an der Spitze angeklopft, mit einem Sensor oder Mikrofon daran.</translation>
    </message>
    <message>
        <source>The throttle run through, with sensors on airframe and bay, or one of them.</source>
        <translation>Das Gas einmal durchfahren, mit Sensoren an Rahmen und Gondel oder an einem von beiden.</translation>
    </message>
    <message>
        <source>The rotors heard by a microphone.</source>
        <translation>Die Rotoren, von einem Mikrofon gehört.</translation>
    </message>
    <message>
        <source>A film taken by the camera in flight.</source>
        <translation>Ein Film, von der Kamera im Flug aufgenommen.</translation>
    </message>
    <message>
        <source>Not used</source>
        <comment>role of a column</comment>
        <translation>Nicht benutzt</translation>
    </message>
    <message>
        <source>Time</source>
        <comment>role of a column</comment>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>Acceleration</source>
        <translation>Beschleunigung</translation>
    </message>
    <message>
        <source>Turn rate</source>
        <translation>Drehrate</translation>
    </message>
    <message>
        <source>Sound</source>
        <comment>what a column holds</comment>
        <translation>Ton</translation>
    </message>
    <message>
        <source>Throttle</source>
        <translation>Gas</translation>
    </message>
    <message>
        <source>Rotor speed</source>
        <translation>Rotordrehzahl</translation>
    </message>
    <message>
        <source>Something else</source>
        <comment>what a column holds</comment>
        <translation>Etwas anderes</translation>
    </message>
    <message>
        <source>of full scale</source>
        <translation>vom Vollausschlag</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>Recordings (%1)</source>
        <translation>Aufzeichnungen (%1)</translation>
    </message>
    <message>
        <source>All files (*)</source>
        <translation>Alle Dateien (*)</translation>
    </message>
    <message>
        <source>followed through the recording</source>
        <translation>durch die Aufzeichnung verfolgt</translation>
    </message>
    <message>
        <source>hover, predicted</source>
        <translation>Schweben, vorhergesagt</translation>
    </message>
    <message>
        <source>The rotors&apos; speed cannot be followed: %1.</source>
        <translation>Die Drehzahl der Rotoren lässt sich nicht verfolgen: %1.</translation>
    </message>
    <message>
        <source>%1 to %2 s: %3 rpm, computed for %4 % throttle</source>
        <translation>%1 bis %2&#xa0;s: %3&#xa0;U/min, berechnet für %4&#xa0;% Gas</translation>
    </message>
    <message>
        <source>%1 to %2 s: %3 rpm</source>
        <translation>%1 bis %2&#xa0;s: %3&#xa0;U/min</translation>
    </message>
    <message>
        <source>The rotors&apos; speed was followed; it was never steady for as long as a throttle needs.</source>
        <translation>Die Drehzahl der Rotoren wurde verfolgt; sie blieb nie so lange gleich, wie es für eine Gasstellung nötig ist.</translation>
    </message>
    <message>
        <source>The rotors turned steadily %1 times.</source>
        <translation>Die Rotoren drehten %1-mal gleichmäßig.</translation>
    </message>
    <message>
        <source>fore and aft (x)</source>
        <translation>längs (x)</translation>
    </message>
    <message>
        <source>sideways (y)</source>
        <translation>quer (y)</translation>
    </message>
    <message>
        <source>up and down (z)</source>
        <translation>auf und ab (z)</translation>
    </message>
    <message>
        <source>Transfer</source>
        <translation>Übertragung</translation>
    </message>
    <message>
        <source>Bay per airframe</source>
        <translation>Gondel zu Rahmen</translation>
    </message>
    <message>
        <source>%1, predicted</source>
        <translation>%1, vorhergesagt</translation>
    </message>
    <message>
        <source>The bay&apos;s motion over the airframe&apos;s, shown where one explains the other: %1 % of the frequencies.</source>
        <translation>Die Bewegung der Gondel im Verhältnis zu der des Rahmens, gezeigt, wo die eine die andere erklärt: %1&#xa0;% der Frequenzen.</translation>
    </message>
    <message>
        <source>Laid on one clock with %1.</source>
        <translation>Mit %1 auf eine gemeinsame Uhr gelegt.</translation>
    </message>
    <message>
        <source>It cannot be laid on one clock with %1: %2.</source>
        <translation>Mit %1 lässt sie sich nicht auf eine gemeinsame Uhr legen: %2.</translation>
    </message>
    <message>
        <source>Two sensors would give the transfer from airframe to bay: two sweeps whose names say airframe and bay, or columns whose names do.</source>
        <translation>Zwei Sensoren ergäben die Übertragung vom Rahmen zur Gondel: zwei Durchläufe, in deren Namen „Rahmen“ und „Gondel“ stehen, oder Spalten mit solchen Namen.</translation>
    </message>
    <message>
        <source>%1 Hz: loss factor %2</source>
        <translation>%1&#xa0;Hz: Verlustfaktor %2</translation>
    </message>
    <message>
        <source>add a recording</source>
        <translation>Aufzeichnung hinzufügen</translation>
    </message>
    <message>
        <source>Order 1 over the throttle</source>
        <translation>Ordnung 1 über den Gasbereich</translation>
    </message>
    <message>
        <source>Order B over the throttle</source>
        <translation>Ordnung B über den Gasbereich</translation>
    </message>
    <message>
        <source>How strong %1 is at each throttle.</source>
        <comment>an order</comment>
        <translation>Wie stark %1 bei jedem Gas ist.</translation>
    </message>
    <message>
        <source>Speed over the throttle</source>
        <translation>Drehzahl über den Gasbereich</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>predicted</source>
        <translation>vorhergesagt</translation>
    </message>
    <message>
        <source>How fast the rotors turn at each throttle.</source>
        <translation>Wie schnell die Rotoren bei jedem Gas drehen.</translation>
    </message>
    <message>
        <source>At %1&#xa0;% throttle the rotors turn at %2&#xa0;rpm; predicted are %3&#xa0;rpm.</source>
        <translation>Bei %1&#xa0;% Gas drehen die Rotoren mit %2&#xa0;U/min; vorhergesagt sind %3&#xa0;U/min.</translation>
    </message>
    <message>
        <source>Speed: %1 throttles of the sweep correct the motors.</source>
        <translation>Drehzahl: %1 Gasstellungen des Durchlaufs korrigieren die Motoren.</translation>
    </message>
    <message>
        <source>The speeds correct nothing: %1.</source>
        <translation>Die Drehzahlen korrigieren nichts: %1.</translation>
    </message>
    <message>
        <source>The unbalance cannot be told: %1.</source>
        <translation>Die Unwucht lässt sich nicht angeben: %1.</translation>
    </message>
    <message>
        <source>Unbalance: by how the airframe shakes once a turn, over the whole sweep.</source>
        <translation>Unwucht: danach, wie der Rahmen einmal je Umdrehung schüttelt, über den ganzen Durchlauf.</translation>
    </message>
    <message>
        <source>Name the columns by their axes (x, y, z or forward, left, up): then the orders are shown beside their prediction.</source>
        <translation>Die Spalten nach ihren Achsen benennen (x, y, z oder vorn, links, oben): Dann stehen die Ordnungen neben ihrer Vorhersage.</translation>
    </message>
    <message>
        <source>Where the sensor sat is not said: the orders are predicted for the camera&apos;s place.</source>
        <translation>Wo der Sensor saß, ist nicht gesagt: Die Ordnungen sind für den Ort der Kamera vorhergesagt.</translation>
    </message>
    <message>
        <source>Where the sensor sat is not said: the orders are predicted for the middle of the centre plate.</source>
        <translation>Wo der Sensor saß, ist nicht gesagt: Die Ordnungen sind für die Mitte der Mittelplatte vorhergesagt.</translation>
    </message>
    <message>
        <source>Density of %1 (1/Hz)</source>
        <translation>Dichte von %1 (1/Hz)</translation>
    </message>
    <message>
        <source>Density of %1 ((%2)²/Hz)</source>
        <translation>Dichte von %1 ((%2)²/Hz)</translation>
    </message>
    <message>
        <source>Spectrogram</source>
        <translation>Spektrogramm</translation>
    </message>
    <message>
        <source>Which frequencies %1 holds at each moment, the stronger the shade the more.</source>
        <translation>Welche Frequenzen %1 in jedem Augenblick enthält, je kräftiger der Ton, desto mehr.</translation>
    </message>
    <message>
        <source>predicted, %1&#xa0;Hz</source>
        <translation>vorhergesagt, %1&#xa0;Hz</translation>
    </message>
    <message>
        <source>%1, by the speed followed</source>
        <translation>%1, nach der verfolgten Drehzahl</translation>
    </message>
    <message>
        <source>No channel is heard to turn as the throttle says.</source>
        <translation>In keinem Kanal ist zu hören, dass sich etwas so dreht, wie das Gas es sagt.</translation>
    </message>
    <message>
        <source>A column with the throttle would give the orders and the speed over it.</source>
        <translation>Eine Spalte mit dem Gas ergäbe Ordnungen und Drehzahl darüber.</translation>
    </message>
    <message>
        <source>Lines of the film</source>
        <translation>Linien des Films</translation>
    </message>
    <message>
        <source>Wobble (px)</source>
        <translation>Wackeln (px)</translation>
    </message>
    <message>
        <source>filmed</source>
        <translation>gefilmt</translation>
    </message>
    <message>
        <source>floor</source>
        <translation>Rauschgrenze</translation>
    </message>
    <message>
        <source>filmed (Hz):</source>
        <translation>gefilmt (Hz):</translation>
    </message>
    <message>
        <source>orders:</source>
        <translation>Ordnungen:</translation>
    </message>
    <message>
        <source>blind</source>
        <translation>blind</translation>
    </message>
    <message>
        <source>Wobble over the throttle</source>
        <translation>Wackeln über dem Gas</translation>
    </message>
    <message>
        <source>this film</source>
        <translation>dieser Film</translation>
    </message>
    <message>
        <source>the other films</source>
        <translation>die anderen Filme</translation>
    </message>
    <message>
        <source>Where the chart is hatched the film is blind: nothing is said there.</source>
        <translation>Wo das Diagramm schraffiert ist, ist der Film blind: Dort wird nichts gesagt.</translation>
    </message>
    <message>
        <source>Films at three throttles or more give the unbalance of the propellers.</source>
        <translation>Filme bei mindestens drei Gasstellungen ergeben die Unwucht der Propeller.</translation>
    </message>
    <message>
        <source>So large is the unbalance by these films.</source>
        <translation>So groß ist die Unwucht nach diesen Filmen.</translation>
    </message>
    <message>
        <source>No unbalance by these films: %1.</source>
        <translation>Keine Unwucht aus diesen Filmen: %1.</translation>
    </message>
    <message>
        <source>%1 says nothing: %2.</source>
        <translation>%1 sagt nichts: %2.</translation>
    </message>
    <message>
        <source>The film wobbles by %1 px in all, whole frames shake by %2 px.</source>
        <translation>Der Film wackelt insgesamt um %1 px, ganze Bilder zittern um %2 px.</translation>
    </message>
    <message>
        <source>The film stands at %1 % throttle, where this craft is computed to turn as fast; the stick stood at %2 %.</source>
        <translation>Der Film steht bei %1 % Gas, wo dieser Kopter nach der Rechnung so schnell dreht; der Knüppel stand bei %2 %.</translation>
    </message>
    <message>
        <source>%1: filmed %2 px, turning as at %3 % throttle</source>
        <translation>%1: %2 px gefilmt, Drehzahl wie bei %3 % Gas</translation>
    </message>
    <message>
        <source>%1 (flown at %2 %)</source>
        <comment>what a film showed</comment>
        <translation>%1 (geflogen bei %2 %)</translation>
    </message>
    <message>
        <source>%1; predicted %2 px.</source>
        <translation>%1; vorhergesagt %2 px.</translation>
    </message>
    <message>
        <source>Lengths count pixels of the craft&apos;s camera; one is %1 of a pixel of the film.</source>
        <translation>Längen zählen Pixel der Kamera des Kopters; eines davon ist %1 Pixel des Films.</translation>
    </message>
    <message>
        <source>%1 cannot be read: %2.</source>
        <translation>%1 lässt sich nicht lesen: %2.</translation>
    </message>
    <message>
        <source>%1, as %2 Hz</source>
        <comment>an order and the alias that is meant</comment>
        <translation>%1, als %2 Hz</translation>
    </message>
    <message>
        <source>%1 is left out: %2.</source>
        <translation>%1 wird ausgelassen: %2.</translation>
    </message>
    <message>
        <source>%1: %2.</source>
        <translation>%1: %2.</translation>
    </message>
    <message>
        <source>Readout: of the camera, by this film.</source>
        <translation>Auslesezeit: die der Kamera nach diesem Film.</translation>
    </message>
    <message>
        <source>from %1 s</source>
        <comment>part of a recording</comment>
        <translation>ab %1 s</translation>
    </message>
    <message>
        <source>%1 to %2 s</source>
        <comment>part of a recording</comment>
        <translation>%1 bis %2 s</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <comment>file and its part</comment>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>No channel is heard to turn.</source>
        <translation>In keinem Kanal ist zu hören, dass sich etwas dreht.</translation>
    </message>
</context>
<context>
    <name>TubeStock</name>
    <message>
        <source>%1 must be from %2 to %3</source>
        <translation>%1 muss zwischen %2 und %3 liegen</translation>
    </message>
    <message>
        <source>a bore of %1&#xa0;mm does not fit into an outer diameter of %2&#xa0;mm</source>
        <translation>ein Innendurchmesser von %1&#xa0;mm passt nicht in einen Außendurchmesser von %2&#xa0;mm</translation>
    </message>
</context>
<context>
    <name>stillbay</name>
    <message>
        <source>%1</source>
        <translation>%1</translation>
    </message>
    <message>
        <source>Tube %1 is stretched to %2 times the free length at %3&#xa0;g, beyond the tube&apos;s limit of %4: use a longer or stiffer tube, or less stretch.</source>
        <translation>Schlauch %1 ist bei %3&#xa0;g auf das %2-Fache der freien Länge gedehnt, über seine Grenze von %4 hinaus: einen längeren oder steiferen Schlauch nehmen oder weniger dehnen.</translation>
    </message>
    <message>
        <source>Tubes %1 are stretched to %2 times the free length at %3&#xa0;g, beyond the tube&apos;s limit of %4: use a longer or stiffer tube, or less stretch.</source>
        <translation>Die Schläuche %1 sind bei %3&#xa0;g auf das %2-Fache der freien Länge gedehnt, über ihre Grenze von %4 hinaus: längere oder steifere Schläuche nehmen oder weniger dehnen.</translation>
    </message>
    <message>
        <source>Tube %1 is pushed together instead of stretched at %2&#xa0;g: stretch more, or raise the anchors less steeply.</source>
        <translation>Schlauch %1 ist bei %2&#xa0;g gestaucht statt gedehnt: stärker dehnen oder die Neigung verringern.</translation>
    </message>
    <message>
        <source>Tubes %1 are pushed together instead of stretched at %2&#xa0;g: stretch more, or raise the anchors less steeply.</source>
        <translation>Die Schläuche %1 sind bei %2&#xa0;g gestaucht statt gedehnt: stärker dehnen oder die Neigung verringern.</translation>
    </message>
    <message>
        <source>Tube %1 is buckled sideways at %2&#xa0;g, so the numbers of this tune do not hold: stretch the tubes more.</source>
        <translation>Schlauch %1 ist bei %2&#xa0;g seitlich ausgeknickt, die Zahlen dieser Abstimmung gelten deshalb nicht: die Schläuche stärker dehnen.</translation>
    </message>
    <message>
        <source>Tubes %1 are buckled sideways at %2&#xa0;g, so the numbers of this tune do not hold: stretch the tubes more.</source>
        <translation>Die Schläuche %1 sind bei %2&#xa0;g seitlich ausgeknickt, die Zahlen dieser Abstimmung gelten deshalb nicht: die Schläuche stärker dehnen.</translation>
    </message>
    <message>
        <source>Tube %1 is bent by up to %2° at rest, beyond the %3° that the computation covers: add tubes, spread them or stretch them more.</source>
        <translation>Schlauch %1 ist in der Ruhelage bis zu %2° gebogen, mehr als die %3°, für die gerechnet wird: Schläuche hinzufügen, weiter auseinander setzen oder stärker dehnen.</translation>
    </message>
    <message>
        <source>Tubes %1 are bent by up to %2° at rest, beyond the %3° that the computation covers: add tubes, spread them or stretch them more.</source>
        <translation>Die Schläuche %1 sind in der Ruhelage bis zu %2° gebogen, mehr als die %3°, für die gerechnet wird: Schläuche hinzufügen, weiter auseinander setzen oder stärker dehnen.</translation>
    </message>
    <message>
        <source>At 3&#xa0;g the bay finds no stable rest: stretch the tubes more, or use a stiffer tube.</source>
        <translation>Bei 3&#xa0;g findet die Gondel keine stabile Ruhelage: die Schläuche stärker dehnen oder einen steiferen Schlauch nehmen.</translation>
    </message>
    <message>
        <source>In a 3&#xa0;g pull-up the bay moves %1&#xa0;mm and hits after %2&#xa0;mm: use a stiffer or shorter tube, or leave more room.</source>
        <translation>Beim Abfangen mit 3&#xa0;g bewegt sich die Gondel %1&#xa0;mm und stößt nach %2&#xa0;mm an: einen steiferen oder kürzeren Schlauch nehmen oder mehr Platz lassen.</translation>
    </message>
    <message>
        <source>Even the full pack cannot hold this craft in the air: check motor, propeller and masses.</source>
        <translation>Auch der volle Akku kann diesen Kopter nicht in der Luft halten: Motor, Propeller und Massen prüfen.</translation>
    </message>
    <message>
        <source>The empty pack cannot hold this craft in the air: land early, or check motor, propeller and masses.</source>
        <translation>Der leere Akku kann diesen Kopter nicht in der Luft halten: früh landen oder Motor, Propeller und Massen prüfen.</translation>
    </message>
    <message>
        <source>The propeller&apos;s %1 estimated from pitch, diameter and blades (±25&#xa0;%): enter measured values to trust speeds and hover.</source>
        <translation>Propeller: %1 aus Steigung, Durchmesser und Blattzahl geschätzt (±25&#xa0;%); gemessene Werte eingeben, damit Drehzahlen und Schwebegas verlässlich sind.</translation>
    </message>
    <message>
        <source>thrust coefficient is</source>
        <translation>Schubbeiwert</translation>
    </message>
    <message>
        <source>power coefficient is</source>
        <translation>Leistungsbeiwert</translation>
    </message>
    <message>
        <source>thrust and power coefficients are</source>
        <translation>Schub- und Leistungsbeiwert</translation>
    </message>
    <message>
        <source>arms swing</source>
        <translation>Ausleger schwingen</translation>
    </message>
    <message>
        <source>arms swing up and down</source>
        <translation>Ausleger schwingen auf und ab</translation>
    </message>
    <message>
        <source>arms swing sideways</source>
        <translation>Ausleger schwingen seitwärts</translation>
    </message>
    <message>
        <source>a tube goes slack</source>
        <translation>ein Schlauch wird schlaff</translation>
    </message>
    <message>
        <source>a tube buckles</source>
        <translation>ein Schlauch knickt aus</translation>
    </message>
    <message>
        <source>a tube bends too far</source>
        <translation>ein Schlauch biegt sich zu weit</translation>
    </message>
    <message>
        <source>a tube is stretched beyond its limit</source>
        <translation>ein Schlauch ist über seine Grenze gedehnt</translation>
    </message>
    <message>
        <source>a tube is stretched beyond its limit at 3 g</source>
        <translation>ein Schlauch ist bei 3&#xa0;g über seine Grenze gedehnt</translation>
    </message>
    <message>
        <source>the bay finds no rest at 3 g</source>
        <translation>die Gondel findet bei 3&#xa0;g keine Ruhelage</translation>
    </message>
    <message>
        <source>the bay hits in a 3 g pull-up</source>
        <translation>die Gondel stößt beim Abfangen mit 3&#xa0;g an</translation>
    </message>
    <message>
        <source>the bay swings with the craft</source>
        <translation>die Gondel schwingt mit dem Kopter</translation>
    </message>
    <message>
        <source>the pack cannot hold the craft</source>
        <translation>der Akku reicht nicht zum Schweben</translation>
    </message>
    <message>
        <source>Tubes %1&#xa0;mm shorter: %2&#xa0;mm free</source>
        <translation>Schläuche %1&#xa0;mm kürzer: %2&#xa0;mm frei</translation>
    </message>
    <message>
        <source>Tubes %1&#xa0;mm longer: %2&#xa0;mm free</source>
        <translation>Schläuche %1&#xa0;mm länger: %2&#xa0;mm frei</translation>
    </message>
    <message>
        <source>Stretch −%1 points: to %2&#xa0;%</source>
        <translation>Dehnung −%1 Punkte: auf %2&#xa0;%</translation>
    </message>
    <message>
        <source>Stretch +%1 points: to %2&#xa0;%</source>
        <translation>Dehnung +%1 Punkte: auf %2&#xa0;%</translation>
    </message>
    <message>
        <source>Stretch −%1 points: %2&#xa0;mm free</source>
        <translation>Dehnung −%1 Punkte: %2&#xa0;mm frei</translation>
    </message>
    <message>
        <source>Stretch +%1 points: %2&#xa0;mm free</source>
        <translation>Dehnung +%1 Punkte: %2&#xa0;mm frei</translation>
    </message>
    <message>
        <source>Tubes %1&#xa0;Shore softer: %2&#xa0;Shore&#xa0;A</source>
        <translation>Schläuche %1&#xa0;Shore weicher: %2&#xa0;Shore&#xa0;A</translation>
    </message>
    <message>
        <source>Tubes %1&#xa0;Shore harder: %2&#xa0;Shore&#xa0;A</source>
        <translation>Schläuche %1&#xa0;Shore härter: %2&#xa0;Shore&#xa0;A</translation>
    </message>
    <message>
        <source>Elevation of the tubes %1° less</source>
        <translation>Neigung der Schläuche %1° geringer</translation>
    </message>
    <message>
        <source>Elevation of the tubes %1° more</source>
        <translation>Neigung der Schläuche %1° größer</translation>
    </message>
    <message>
        <source>Arms %1&#xa0;mm thicker: %2&#xa0;×&#xa0;%3&#xa0;mm</source>
        <translation>Ausleger %1&#xa0;mm dicker: %2&#xa0;×&#xa0;%3&#xa0;mm</translation>
    </message>
    <message>
        <source>Arm walls %1&#xa0;mm thicker: %2&#xa0;mm</source>
        <translation>Auslegerwand %1&#xa0;mm dicker: %2&#xa0;mm</translation>
    </message>
    <message>
        <source>Darker filter: exposure %1&#xa0;ms</source>
        <translation>Dunklerer Filter: Belichtungszeit %1&#xa0;ms</translation>
    </message>
    <message>
        <source>Propellers balanced to %1&#xa0;g·mm</source>
        <translation>Propeller ausgewuchtet auf %1&#xa0;g·mm</translation>
    </message>
    <message>
        <source>%1&#xa0;%</source>
        <translation>%1&#xa0;%</translation>
    </message>
    <message>
        <source>%1&#xa0;% to %2&#xa0;%</source>
        <translation>%1&#xa0;% bis %2&#xa0;%</translation>
    </message>
    <message>
        <source>Faint wobble at %1</source>
        <translation>Schwaches Wackeln bei %1</translation>
    </message>
    <message>
        <source>Wobble at %1, bad at %2</source>
        <translation>Wackeln bei %1, stark bei %2</translation>
    </message>
    <message>
        <source>%1.</source>
        <translation>%1.</translation>
    </message>
    <message>
        <source>%1: %2, %3&#xa0;px at %4&#xa0;%.</source>
        <translation>%1: %2, %3&#xa0;px bei %4&#xa0;%.</translation>
    </message>
    <message>
        <source>from %1</source>
        <translation>von %1</translation>
    </message>
    <message>
        <source>Nowhere clean.</source>
        <translation>Nirgends sauber.</translation>
    </message>
    <message>
        <source>Clean %1 throttle.</source>
        <translation>Sauber %1 Gas.</translation>
    </message>
    <message>
        <source>The pack cannot hold this craft in the air.</source>
        <translation>Der Akku kann diesen Kopter nicht in der Luft halten.</translation>
    </message>
    <message>
        <source>Hover is at %1&#xa0;% on a full pack; an empty one cannot hold the craft.</source>
        <translation>Schweben bei %1&#xa0;% mit vollem Akku; ein leerer reicht nicht zum Schweben.</translation>
    </message>
    <message>
        <source>Hover is at %1&#xa0;% on a full pack, %2&#xa0;% on an empty one (%3&#xa0;rpm).</source>
        <translation>Schweben bei %1&#xa0;% mit vollem Akku, %2&#xa0;% mit leerem (%3&#xa0;U/min).</translation>
    </message>
    <message>
        <source>order 1 (unbalance)</source>
        <translation>Ordnung 1 (Unwucht)</translation>
    </message>
    <message>
        <source>order B (blade pass)</source>
        <translation>Ordnung B (Blattdurchgang)</translation>
    </message>
    <message>
        <source>order 2B (blade pass)</source>
        <translation>Ordnung 2B (Blattdurchgang)</translation>
    </message>
    <message>
        <source>order %1B (blade pass)</source>
        <translation>Ordnung %1B (Blattdurchgang)</translation>
    </message>
    <message>
        <source>order 1</source>
        <translation>Ordnung 1</translation>
    </message>
    <message>
        <source>order B</source>
        <translation>Ordnung B</translation>
    </message>
    <message>
        <source>order 2B</source>
        <translation>Ordnung 2B</translation>
    </message>
    <message>
        <source>order %1B</source>
        <translation>Ordnung %1B</translation>
    </message>
    <message>
        <source>The bay rests where it is drawn</source>
        <translation>Die Gondel ruht, wo sie gezeichnet ist</translation>
    </message>
    <message>
        <source>The bay rises %1&#xa0;mm from the drawing</source>
        <translation>Die Gondel steigt %1&#xa0;mm über ihre gezeichnete Lage</translation>
    </message>
    <message>
        <source>The bay sags %1&#xa0;mm from the drawing</source>
        <translation>Die Gondel sinkt %1&#xa0;mm unter ihre gezeichnete Lage</translation>
    </message>
    <message>
        <source>%1 and turns by %2°.</source>
        <translation>%1 und dreht sich um %2°.</translation>
    </message>
    <message>
        <source>Take the propellers off for all work on the bench.</source>
        <translation>Bei allen Arbeiten an der Werkbank die Propeller abnehmen.</translation>
    </message>
    <message>
        <source>Fit a safety tether between bay and airframe: a tube can tear or slip off.</source>
        <translation>Eine Fangleine zwischen Gondel und Rahmen anbringen: Ein Schlauch kann reißen oder abrutschen.</translation>
    </message>
    <message>
        <source>Inspect tubes and clamps before each flight; retighten, and replace what shows cracks.</source>
        <translation>Schläuche und Klemmen vor jedem Flug prüfen; nachziehen und ersetzen, was Risse zeigt.</translation>
    </message>
    <message>
        <source>Charge, store and carry batteries as their maker says.</source>
        <translation>Akkus nach Angabe des Herstellers laden, lagern und transportieren.</translation>
    </message>
    <message>
        <source>Local flying rules and licensed practice come before anything said here.</source>
        <translation>Örtliche Flugregeln und fachgerechte Praxis haben Vorrang vor allem, was hier steht.</translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <translation>%1 und %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>What the part weighs on the kitchen scale, screws and cables included.</source>
        <translation>Was das Teil auf der Küchenwaage wiegt, mit Schrauben und Kabeln.</translation>
    </message>
    <message>
        <source>Centre</source>
        <translation>Mitte</translation>
    </message>
    <message>
        <source>Where the part&apos;s middle sits, measured from the middle of the centre plate: forward, left, up.</source>
        <translation>Wo die Mitte des Teils sitzt, gemessen von der Mitte der Mittelplatte: vorn, links, oben.</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>The box that just holds the part: along, across, high.</source>
        <translation>Der Kasten, in den das Teil gerade passt: längs, quer, hoch.</translation>
    </message>
    <message>
        <source>Width</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>How wide the arm is seen from above, by calliper.</source>
        <translation>Wie breit der Ausleger von oben gesehen ist, mit dem Messschieber.</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>How high the arm is seen from the side, by calliper.</source>
        <translation>Wie hoch der Ausleger von der Seite gesehen ist, mit dem Messschieber.</translation>
    </message>
    <message>
        <source>Wall</source>
        <translation>Wandstärke</translation>
    </message>
    <message>
        <source>Wall of a hollow arm; empty for a solid one.</source>
        <translation>Wandstärke eines hohlen Auslegers; leer für einen massiven.</translation>
    </message>
    <message>
        <source>Density</source>
        <translation>Dichte</translation>
    </message>
    <message>
        <source>Weigh a piece of the arm and divide by the volume of its material.</source>
        <translation>Ein Stück des Auslegers wiegen und durch das Volumen seines Materials teilen.</translation>
    </message>
    <message>
        <source>Young&apos;s modulus</source>
        <translation>Elastizitätsmodul</translation>
    </message>
    <message>
        <source>How stiff the material is along the arm: from a data sheet, or from the droop of an arm clamped at its root with a weight on its tip.</source>
        <translation>Wie steif das Material längs des Auslegers ist: aus einem Datenblatt oder aus der Durchbiegung eines am Fuß eingespannten Auslegers mit einem Gewicht an der Spitze.</translation>
    </message>
    <message>
        <source>Shear modulus</source>
        <translation>Schubmodul</translation>
    </message>
    <message>
        <source>How stiff the material is against twisting: from a data sheet; wood is near a fifteenth of its Young&apos;s modulus, metal near three eighths.</source>
        <translation>Wie steif das Material gegen Verdrehen ist: aus einem Datenblatt; bei Holz etwa ein Fünfzehntel seines Elastizitätsmoduls, bei Metall etwa drei Achtel.</translation>
    </message>
    <message>
        <source>Loss factor</source>
        <translation>Verlustfaktor</translation>
    </message>
    <message>
        <source>How quickly a tapped arm falls silent: metal about 0.002, wood and glued laminates about 0.01.</source>
        <translation>Wie schnell ein angeklopfter Ausleger verstummt: Metall etwa 0,002, Holz und verleimte Schichtstoffe etwa 0,01.</translation>
    </message>
    <message>
        <source>Root stiffness</source>
        <translation>Fußsteifigkeit</translation>
    </message>
    <message>
        <source>How much the joint at the arm&apos;s root gives, about all three axes; empty for a rigid joint.</source>
        <translation>Wie weit die Verbindung am Fuß des Auslegers nachgibt, um alle drei Achsen; leer für eine starre.</translation>
    </message>
    <message>
        <source>Direction</source>
        <translation>Richtung</translation>
    </message>
    <message>
        <source>Where the arm points seen from above: 0 forward, 90 left, 180 back.</source>
        <translation>Wohin der Ausleger von oben gesehen zeigt: 0 vorn, 90 links, 180 hinten.</translation>
    </message>
    <message>
        <source>Root radius</source>
        <translation>Fußradius</translation>
    </message>
    <message>
        <source>From the middle of the centre plate to where the arm leaves its clamp.</source>
        <translation>Von der Mitte der Mittelplatte bis dorthin, wo der Ausleger seine Klemme verlässt.</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>From the edge of the clamp to the motor&apos;s axis.</source>
        <translation>Vom Rand der Klemme bis zur Achse des Motors.</translation>
    </message>
    <message>
        <source>How far the arm&apos;s middle line lies above the middle of the centre plate; below is negative.</source>
        <translation>Wie weit die Mittellinie des Auslegers über der Mitte der Mittelplatte liegt; darunter ist negativ.</translation>
    </message>
    <message>
        <source>KV</source>
        <translation>KV</translation>
    </message>
    <message>
        <source>Revolutions a minute for each volt without load, printed on the motor.</source>
        <translation>Umdrehungen je Minute für jedes Volt ohne Last, auf dem Motor aufgedruckt.</translation>
    </message>
    <message>
        <source>Resistance</source>
        <translation>Widerstand</translation>
    </message>
    <message>
        <source>Winding resistance between two of the motor&apos;s leads, from a milliohm meter or the data sheet; add what the speed controller and its wires have.</source>
        <translation>Wicklungswiderstand zwischen zwei der Motorleitungen, vom Milliohmmeter oder aus dem Datenblatt; dazu, was Drehzahlregler und Leitungen haben.</translation>
    </message>
    <message>
        <source>No-load current</source>
        <translation>Leerlaufstrom</translation>
    </message>
    <message>
        <source>What the motor draws spinning without a propeller.</source>
        <translation>Was der Motor ohne Propeller aufnimmt.</translation>
    </message>
    <message>
        <source>One motor with its screws and the wire along the arm.</source>
        <translation>Ein Motor mit seinen Schrauben und der Leitung am Ausleger.</translation>
    </message>
    <message>
        <source>Height above arm</source>
        <translation>Höhe über dem Ausleger</translation>
    </message>
    <message>
        <source>Diameter</source>
        <translation>Durchmesser</translation>
    </message>
    <message>
        <source>Tip to tip, the first of the two numbers on the propeller.</source>
        <translation>Von Spitze zu Spitze, die erste der zwei Zahlen auf dem Propeller.</translation>
    </message>
    <message>
        <source>Pitch</source>
        <translation>Steigung</translation>
    </message>
    <message>
        <source>The second of the two numbers on the propeller.</source>
        <translation>Die zweite der zwei Zahlen auf dem Propeller.</translation>
    </message>
    <message>
        <source>Blades</source>
        <translation>Blätter</translation>
    </message>
    <message>
        <source>How many blades one propeller has.</source>
        <translation>Wie viele Blätter ein Propeller hat.</translation>
    </message>
    <message>
        <source>One propeller with its nut, on the kitchen scale.</source>
        <translation>Ein Propeller mit seiner Mutter, auf der Küchenwaage.</translation>
    </message>
    <message>
        <source>Thrust coefficient</source>
        <translation>Schubbeiwert</translation>
    </message>
    <message>
        <source>Thrust over air density × turns per second² × diameter⁴, from a thrust stand; empty to estimate it from pitch, diameter and blades.</source>
        <translation>Schub durch Luftdichte × Umdrehungen je Sekunde² × Durchmesser⁴, vom Schubprüfstand; leer, um ihn aus Steigung, Durchmesser und Blattzahl zu schätzen.</translation>
    </message>
    <message>
        <source>Power coefficient</source>
        <translation>Leistungsbeiwert</translation>
    </message>
    <message>
        <source>Shaft power over air density × turns per second³ × diameter⁵, from a thrust stand; empty to estimate it from pitch, diameter and blades.</source>
        <translation>Wellenleistung durch Luftdichte × Umdrehungen je Sekunde³ × Durchmesser⁵, vom Schubprüfstand; leer, um ihn aus Steigung, Durchmesser und Blattzahl zu schätzen.</translation>
    </message>
    <message>
        <source>Cells in series</source>
        <translation>Zellen in Reihe</translation>
    </message>
    <message>
        <source>How many cells the pack has in a row, printed on it.</source>
        <translation>Wie viele Zellen der Akku in Reihe hat, steht darauf.</translation>
    </message>
    <message>
        <source>Full voltage</source>
        <translation>Spannung voll</translation>
    </message>
    <message>
        <source>One cell&apos;s voltage fresh off the charger.</source>
        <translation>Spannung einer Zelle frisch vom Ladegerät.</translation>
    </message>
    <message>
        <source>Empty voltage</source>
        <translation>Spannung leer</translation>
    </message>
    <message>
        <source>One cell&apos;s voltage when you land.</source>
        <translation>Spannung einer Zelle beim Landen.</translation>
    </message>
    <message>
        <source>Pack resistance</source>
        <translation>Akkuwiderstand</translation>
    </message>
    <message>
        <source>What the whole pack and its plug have, as a good charger shows it.</source>
        <translation>Innenwiderstand des ganzen Akkus mit Stecker, wie ihn ein gutes Ladegerät anzeigt.</translation>
    </message>
    <message>
        <source>Unbalance</source>
        <translation>Unwucht</translation>
    </message>
    <message>
        <source>Residual unbalance of one motor with its propeller: the tape that balanced it, in grams, times its distance from the axis; about 1 carefully balanced, several out of the bag.</source>
        <translation>Restunwucht eines Motors mit Propeller: das Klebeband, das ihn auswuchtet, in Gramm, mal seinen Abstand von der Achse; sorgfältig ausgewuchtet etwa 1, frisch aus der Tüte mehrere.</translation>
    </message>
    <message>
        <source>Blade-pass pulse</source>
        <translation>Stoß je Blattdurchgang</translation>
    </message>
    <message>
        <source>How strongly thrust pulses each time a blade passes its arm, as a share of one motor&apos;s thrust, then for twice that rate, and so on.</source>
        <translation>Wie stark der Schub pulsiert, wenn ein Blatt am Ausleger vorbeigeht, als Anteil des Schubs eines Motors; dann für das Doppelte dieser Frequenz und so weiter.</translation>
    </message>
    <message>
        <source>Free travel</source>
        <translation>Freier Federweg</translation>
    </message>
    <message>
        <source>The smallest gap between the hanging bay and whatever it would hit first.</source>
        <translation>Der kleinste Abstand zwischen der hängenden Gondel und dem, woran sie zuerst anstieße.</translation>
    </message>
    <message>
        <source>Position</source>
        <translation>Lage</translation>
    </message>
    <message>
        <source>Where the lens sits, measured from the middle of the centre plate: forward, left, up.</source>
        <translation>Wo das Objektiv sitzt, gemessen von der Mitte der Mittelplatte: vorn, links, oben.</translation>
    </message>
    <message>
        <source>Tilt down</source>
        <translation>Blick nach unten</translation>
    </message>
    <message>
        <source>How far the camera looks down: 0 at the horizon, 90 straight at the ground.</source>
        <translation>Wie weit die Kamera nach unten blickt: 0 zum Horizont, 90 senkrecht zum Boden.</translation>
    </message>
    <message>
        <source>Picture width</source>
        <translation>Bildbreite</translation>
    </message>
    <message>
        <source>Pixels across one frame of the film.</source>
        <translation>Pixel quer über ein Bild des Films.</translation>
    </message>
    <message>
        <source>Picture height</source>
        <translation>Bildhöhe</translation>
    </message>
    <message>
        <source>Pixels down one frame of the film.</source>
        <translation>Pixel von oben nach unten in einem Bild des Films.</translation>
    </message>
    <message>
        <source>Horizontal field of view</source>
        <translation>Waagerechter Bildwinkel</translation>
    </message>
    <message>
        <source>How wide the lens sees from edge to edge: film a ruler and take twice the arctangent of half its visible length over its distance.</source>
        <translation>Wie weit das Objektiv von Rand zu Rand sieht: ein Lineal filmen und zweimal den Arkustangens aus halber sichtbarer Länge durch Abstand nehmen.</translation>
    </message>
    <message>
        <source>Frame rate</source>
        <translation>Bildrate</translation>
    </message>
    <message>
        <source>Frames a second as set in the camera.</source>
        <translation>Bilder je Sekunde, wie in der Kamera eingestellt.</translation>
    </message>
    <message>
        <source>Readout time</source>
        <translation>Auslesezeit</translation>
    </message>
    <message>
        <source>Time from the first to the last row of one frame; 0 for a global shutter. Film a lamp that flickers at a known rate and count its stripes.</source>
        <translation>Zeit von der ersten bis zur letzten Zeile eines Bildes; 0 bei Global Shutter. Eine Lampe filmen, die mit bekannter Frequenz flackert, und ihre Streifen zählen.</translation>
    </message>
    <message>
        <source>Exposure</source>
        <translation>Belichtungszeit</translation>
    </message>
    <message>
        <source>How long one row collects light: 2 ms is a shutter of 1/500 s. A darker filter makes it longer.</source>
        <translation>Wie lange eine Zeile Licht sammelt: 2&#xa0;ms sind 1/500&#xa0;s Verschlusszeit. Ein dunklerer Filter verlängert sie.</translation>
    </message>
    <message>
        <source>Outer diameter</source>
        <translation>Außendurchmesser</translation>
    </message>
    <message>
        <source>Of the tube lying relaxed, by calliper.</source>
        <translation>Am entspannten Schlauch, mit dem Messschieber.</translation>
    </message>
    <message>
        <source>Bore</source>
        <translation>Innendurchmesser</translation>
    </message>
    <message>
        <source>Inner diameter of the relaxed tube; 0 for a solid cord.</source>
        <translation>Innendurchmesser des entspannten Schlauchs; 0 für eine Vollschnur.</translation>
    </message>
    <message>
        <source>Hardness</source>
        <translation>Härte</translation>
    </message>
    <message>
        <source>As sold; soft silicone is about 40, firm about 70. A measured modulus replaces it.</source>
        <translation>Wie beim Kauf angegeben; weiches Silikon hat etwa 40, festes etwa 70. Ein gemessener Elastizitätsmodul ersetzt sie.</translation>
    </message>
    <message>
        <source>From your own hang test, which beats the printed hardness; empty to take it from the hardness.</source>
        <translation>Aus dem eigenen Hängeversuch, genauer als die aufgedruckte Härte; leer: aus der Härte geschätzt.</translation>
    </message>
    <message>
        <source>Dynamic ratio</source>
        <translation>Dynamische Versteifung</translation>
    </message>
    <message>
        <source>How much stiffer the rubber is when vibrating than when loaded slowly: a pluck test measures it; 1.1 to 1.4 is usual for silicone.</source>
        <translation>Um welchen Faktor der Gummi beim Schwingen steifer ist als bei langsamer Last: Ein Zupfversuch misst ihn; 1,1 bis 1,4 ist bei Silikon üblich.</translation>
    </message>
    <message>
        <source>How quickly a plucked bay comes to rest: twice the damping ratio; about 0.05 for lively and 0.2 for dull silicone.</source>
        <translation>Wie schnell eine angezupfte Gondel zur Ruhe kommt: das Doppelte des Dämpfungsgrads; etwa 0,05 für federndes und 0,2 für stark dämpfendes Silikon.</translation>
    </message>
    <message>
        <source>Weigh a length of tube and divide by the volume of its rubber.</source>
        <translation>Ein Stück Schlauch wiegen und durch das Volumen seines Gummis teilen.</translation>
    </message>
    <message>
        <source>Stretch limit</source>
        <translation>Größte Dehnung</translation>
    </message>
    <message>
        <source>Largest length over relaxed length you trust the tube with for a season.</source>
        <translation>Größte Länge durch entspannte Länge, die man dem Schlauch eine Saison lang zutraut.</translation>
    </message>
    <message>
        <source>Bay point</source>
        <translation>Gondelpunkt</translation>
    </message>
    <message>
        <source>Where the tube&apos;s clamp on the bay ends, with the bay held as drawn, from the middle of the centre plate: forward, left, up.</source>
        <translation>Wo die Klemme des Schlauchs an der Gondel endet, bei gezeichneter Lage der Gondel, von der Mitte der Mittelplatte: vorn, links, oben.</translation>
    </message>
    <message>
        <source>Where the tube points seen from above, from the bay to the airframe: 0 forward, 90 left.</source>
        <translation>Wohin der Schlauch von oben gesehen zeigt, von der Gondel zum Rahmen: 0 vorn, 90 links.</translation>
    </message>
    <message>
        <source>Elevation</source>
        <translation>Neigung</translation>
    </message>
    <message>
        <source>How steeply the tube goes up from the bay to the airframe; 0 is level, 90 straight up.</source>
        <translation>Wie steil der Schlauch von der Gondel zum Rahmen ansteigt; 0 ist waagerecht, 90 senkrecht nach oben.</translation>
    </message>
    <message>
        <source>Airframe hole</source>
        <translation>Bohrung im Rahmen</translation>
    </message>
    <message>
        <source>Where the tube&apos;s clamp on the airframe ends once the holes are drilled, from the middle of the centre plate: forward, left, up.</source>
        <translation>Wo die Klemme des Schlauchs am Rahmen endet, sobald die Bohrungen da sind, von der Mitte der Mittelplatte: vorn, links, oben.</translation>
    </message>
    <message>
        <source>Free length</source>
        <translation>Freie Länge</translation>
    </message>
    <message>
        <source>Length of the relaxed tube between its two clamps; cut it longer by what the clamps hold.</source>
        <translation>Länge des entspannten Schlauchs zwischen seinen zwei Klemmen; um das länger schneiden, was die Klemmen halten.</translation>
    </message>
    <message>
        <source>Stretch</source>
        <translation>Dehnung</translation>
    </message>
    <message>
        <source>Length as fitted over free length: 1.15 is 15 % longer. Empty once the holes are drilled: they decide it.</source>
        <translation>Eingebaute Länge durch freie Länge: 1,15 ist 15&#xa0;% länger. Leer, sobald gebohrt ist: Die Bohrungen bestimmen sie.</translation>
    </message>
    <message>
        <source>Air density</source>
        <translation>Luftdichte</translation>
    </message>
    <message>
        <source>1.2 near the sea in mild weather, about 1.0 at 1800 m.</source>
        <translation>1,2 nahe dem Meer bei mildem Wetter, etwa 1,0 auf 1800&#xa0;m.</translation>
    </message>
    <message>
        <source>Cruise throttle</source>
        <translation>Gas im Reiseflug</translation>
    </message>
    <message>
        <source>The throttle you film at, from and to: 0.25 is a quarter.</source>
        <translation>Das Gas, bei dem gefilmt wird, von und bis: 0,25 ist ein Viertel.</translation>
    </message>
    <message>
        <source>Faint from</source>
        <translation>Schwach ab</translation>
    </message>
    <message>
        <source>Wobble from which a keen eye sees it, rms in film pixels.</source>
        <translation>Wackeln, ab dem ein scharfes Auge es sieht, Effektivwert in Filmpixeln.</translation>
    </message>
    <message>
        <source>Bad from</source>
        <translation>Stark ab</translation>
    </message>
    <message>
        <source>Wobble from which the film is spoilt, rms in film pixels.</source>
        <translation>Wackeln, ab dem der Film unbrauchbar ist, Effektivwert in Filmpixeln.</translation>
    </message>
    <message>
        <source>Unknown key kept but not used: %1.</source>
        <translation>Unbekannter Schlüssel, behalten, aber nicht benutzt: %1.</translation>
    </message>
    <message>
        <source>Unknown keys kept but not used: %1.</source>
        <translation>Unbekannte Schlüssel, behalten, aber nicht benutzt: %1.</translation>
    </message>
    <message>
        <source>Unknown keys kept but not used: %1 and %2 more.</source>
        <translation>Unbekannte Schlüssel, behalten, aber nicht benutzt: %1 und %2 weitere.</translation>
    </message>
    <message>
        <source>The file is of version 0; saving it writes version %1.</source>
        <translation>Die Datei ist von Version 0; beim Speichern wird daraus Version %1.</translation>
    </message>
    <message>
        <source>slides fore and aft</source>
        <translation>gleitet längs</translation>
    </message>
    <message>
        <source>slides sideways</source>
        <translation>gleitet quer</translation>
    </message>
    <message>
        <source>bounces</source>
        <translation>hebt und senkt sich</translation>
    </message>
    <message>
        <source>rolls</source>
        <translation>rollt</translation>
    </message>
    <message>
        <source>nods</source>
        <translation>nickt</translation>
    </message>
    <message>
        <source>turns</source>
        <translation>giert</translation>
    </message>
    <message>
        <source>outside the allowed range</source>
        <translation>außerhalb des erlaubten Bereichs</translation>
    </message>
    <message>
        <source>the bay finds no stable rest</source>
        <translation>die Gondel findet keine stabile Ruhelage</translation>
    </message>
    <message>
        <source>At no throttle do 9 of 10 builds stay clean.</source>
        <translation>Bei keiner Gasstellung bleiben 9 von 10 Nachbauten sauber.</translation>
    </message>
    <message>
        <source>9 of 10 builds stay clean from %1&#xa0;% to %2&#xa0;% throttle.</source>
        <translation>9 von 10 Nachbauten bleiben von %1&#xa0;% bis %2&#xa0;% Gas sauber.</translation>
    </message>
    <message>
        <source>A tube has its bay point and its anchor at the same place</source>
        <translation>Bei einem Schlauch liegen Gondelpunkt und Bohrung im Rahmen am selben Ort</translation>
    </message>
    <message>
        <source>no finite answer at %1 % throttle (%2 Hz): the craft is undamped and exactly on a resonance, or its arms are far too soft</source>
        <translation>kein endliches Ergebnis bei %1&#xa0;% Gas (%2&#xa0;Hz): Der Kopter ist ungedämpft und genau auf einer Resonanz, oder seine Ausleger sind viel zu weich</translation>
    </message>
    <message>
        <source>stopped</source>
        <translation>angehalten</translation>
    </message>
    <message>
        <source>a fault in the program: %1</source>
        <translation>ein Fehler im Programm: %1</translation>
    </message>
    <message>
        <source>line %1, column %2</source>
        <translation>Zeile %1, Spalte %2</translation>
    </message>
    <message>
        <source>the search has nothing to choose</source>
        <translation>für die Suche ist nichts freigegeben</translation>
    </message>
    <message>
        <source>%1 is decided by the holes of a drilled craft</source>
        <translation>%1 ist durch die Bohrungen eines gebohrten Kopters festgelegt</translation>
    </message>
    <message>
        <source>%1 needs a range that rises</source>
        <translation>bei %1 muss der Bereich von klein nach groß gehen</translation>
    </message>
    <message>
        <source>%1 is there twice</source>
        <translation>%1 kommt zweimal vor</translation>
    </message>
    <message>
        <source>no design within these limits holds; most often %1</source>
        <translation>kein Entwurf in diesen Grenzen ist machbar; am häufigsten gilt: %1</translation>
    </message>
    <message>
        <source>the map needs two different design variables</source>
        <translation>die Karte braucht zwei verschiedene Entwurfsgrößen</translation>
    </message>
    <message>
        <source>V per cell</source>
        <translation>V je Zelle</translation>
    </message>
    <message>
        <source>an object</source>
        <translation>ein Objekt</translation>
    </message>
    <message>
        <source>a list of %1</source>
        <translation>eine Liste von %1</translation>
    </message>
    <message>
        <source>a list of %1 entries</source>
        <translation>eine Liste mit %1 Einträgen</translation>
    </message>
    <message>
        <source>%1 is missing, needed: %2</source>
        <translation>%1 fehlt, nötig: %2</translation>
    </message>
    <message>
        <source>%1 is %2, must be %3</source>
        <translation>%1 ist %2, verlangt: %3</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>text</source>
        <translation>Text</translation>
    </message>
    <message>
        <source>Version is missing, allowed %1</source>
        <translation>Die Version fehlt, erlaubt ist %1</translation>
    </message>
    <message>
        <source>Version is %1, must be a whole number from %2</source>
        <translation>Die Version ist %1, muss aber eine ganze Zahl von %2 sein</translation>
    </message>
    <message>
        <source>Version is %1, written by a newer Stillbay; this one reads versions %2</source>
        <translation>Die Version ist %1, geschrieben von einem neueren Stillbay; dieses liest die Versionen %2</translation>
    </message>
    <message>
        <source>The file is no Stillbay setup: its &quot;format&quot; is not %1</source>
        <translation>Die Datei ist kein Stillbay-Kopter: Ihr „format“ ist nicht %1</translation>
    </message>
    <message>
        <source>Format is %1, must be %2</source>
        <translation>Das Format ist %1, muss aber %2 sein</translation>
    </message>
    <message>
        <source>The file is cut off: its text ends before the last bracket closes</source>
        <translation>Die Datei ist abgeschnitten: Ihr Text endet vor der letzten schließenden Klammer</translation>
    </message>
    <message>
        <source>The file is not JSON: unexpected line break or control character</source>
        <translation>Die Datei ist kein JSON: unerwarteter Zeilenumbruch oder unerwartetes Steuerzeichen</translation>
    </message>
    <message>
        <source>The file is not JSON: unexpected %1</source>
        <translation>Die Datei ist kein JSON: unerwartetes %1</translation>
    </message>
    <message>
        <source>The file holds the number %1, which is too large</source>
        <translation>Die Datei enthält die Zahl %1, die zu groß ist</translation>
    </message>
    <message>
        <source>The file holds %1, which is no number in JSON</source>
        <translation>Die Datei enthält %1, was in JSON keine Zahl ist</translation>
    </message>
    <message>
        <source>Key %1 appears twice</source>
        <translation>Der Schlüssel %1 kommt zweimal vor</translation>
    </message>
    <message>
        <source>Key %1 is one too many, allowed up to %2 in an object</source>
        <translation>Der Schlüssel %1 ist einer zu viel, erlaubt sind bis zu %2 in einem Objekt</translation>
    </message>
    <message>
        <source>The file nests deeper than %1 levels</source>
        <translation>Die Datei ist tiefer als %1 Ebenen geschachtelt</translation>
    </message>
    <message>
        <source>The file is larger than %1 MB, far more than a setup needs</source>
        <translation>Die Datei ist größer als %1&#xa0;MB, weit mehr, als ein Kopter braucht</translation>
    </message>
    <message>
        <source>The file is empty</source>
        <translation>Die Datei ist leer</translation>
    </message>
    <message>
        <source>The file is not UTF-8 text</source>
        <translation>Die Datei ist kein UTF-8-Text</translation>
    </message>
    <message>
        <source>%1 is not UTF-8 text</source>
        <translation>%1 ist kein UTF-8-Text</translation>
    </message>
    <message>
        <source>%1 has %2 entries, allowed %3</source>
        <translation>%1 hat %2 Einträge, erlaubt sind %3</translation>
    </message>
    <message>
        <source>Wall is %1, must be below half the smaller side, %2</source>
        <translation>Die Wandstärke ist %1, muss aber unter der Hälfte der kleineren Seite liegen, %2</translation>
    </message>
    <message>
        <source>Empty voltage is %1, must not exceed the full voltage, %2</source>
        <translation>Die Spannung der leeren Zelle ist %1, darf die der vollen aber nicht übersteigen, %2</translation>
    </message>
    <message>
        <source>%1 is %2, must fit into one frame, %3</source>
        <translation>%1 ist %2, muss aber in die Dauer eines Bildes passen, %3</translation>
    </message>
    <message>
        <source>Bore is %1, must be smaller than the outer diameter, %2</source>
        <translation>Der Innendurchmesser ist %1, muss aber kleiner sein als der Außendurchmesser, %2</translation>
    </message>
    <message>
        <source>Cruise throttle runs from %1 to %2, the first must be the smaller</source>
        <translation>Das Gas im Reiseflug läuft von %1 bis %2, die erste Zahl muss die kleinere sein</translation>
    </message>
    <message>
        <source>Faint from is %1, must be below bad from, %2</source>
        <translation>„Schwach ab“ ist %1, muss aber unter „Stark ab“ liegen, %2</translation>
    </message>
    <message>
        <source>Airframe hole lies %1 from its bay point, must be at least %2 away</source>
        <translation>Die Bohrung im Rahmen liegt %1 von ihrem Gondelpunkt, muss aber mindestens %2 entfernt sein</translation>
    </message>
    <message>
        <source>Stretch to this hole is %1 (%2 on a free length of %3), allowed %4</source>
        <translation>Die Dehnung bis zu dieser Bohrung ist %1 (%2 bei einer freien Länge von %3), erlaubt ist %4</translation>
    </message>
    <message>
        <source>Stretch is missing, allowed %1</source>
        <translation>Die Dehnung fehlt, erlaubt ist %1</translation>
    </message>
    <message>
        <source>%1°</source>
        <translation>%1°</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>the mass matrix is not positive definite</source>
        <translation>die Massenmatrix ist nicht positiv definit</translation>
    </message>
    <message>
        <source>the modes&apos; iteration did not converge</source>
        <translation>die Iteration der Eigenschwingungen ist nicht konvergiert</translation>
    </message>
    <message>
        <source>a mode of the bay does not swing back</source>
        <translation>eine Eigenschwingung der Gondel schwingt nicht zurück</translation>
    </message>
    <message>
        <source>two modes of the bay coincide so closely that they cannot be told apart</source>
        <translation>zwei Eigenschwingungen der Gondel liegen so dicht beisammen, dass sie nicht zu unterscheiden sind</translation>
    </message>
    <message>
        <source>nothing holds the bay in one motion (%1): add tubes or spread them</source>
        <translation>nichts hält die Gondel in einer Bewegung (%1): Schläuche hinzufügen oder weiter auseinander setzen</translation>
    </message>
    <message>
        <source>no rest pose found at %1 g: the iteration did not converge</source>
        <translation>keine Ruhelage gefunden bei %1&#xa0;g: Die Iteration ist nicht konvergiert</translation>
    </message>
    <message>
        <source>Free length is %1 mm, too short for a clamped tube of this section: allowed above %2 mm</source>
        <translation>Die freie Länge ist %1&#xa0;mm, zu kurz für einen geklemmten Schlauch dieses Querschnitts: erlaubt ist mehr als %2&#xa0;mm</translation>
    </message>
    <message>
        <source>a number from %1</source>
        <translation>eine Zahl von %1</translation>
    </message>
    <message>
        <source>a whole number from %1</source>
        <translation>eine ganze Zahl von %1</translation>
    </message>
    <message>
        <source>null or a number from %1</source>
        <translation>„null“ oder eine Zahl von %1</translation>
    </message>
    <message>
        <source>a list of numbers from %1</source>
        <translation>eine Liste von Zahlen von %1</translation>
    </message>
    <message>
        <source>a list of 2 numbers from %1</source>
        <translation>eine Liste von 2 Zahlen von %1</translation>
    </message>
    <message>
        <source>a list of 3 numbers from %1</source>
        <translation>eine Liste von 3 Zahlen von %1</translation>
    </message>
    <message>
        <source>%1 is %2, allowed %3</source>
        <translation>%1 ist %2, erlaubt ist %3</translation>
    </message>
    <message>
        <source>No throttle of this sweep lies in the cruise window</source>
        <translation>Kein Gaswert dieses Durchlaufs liegt im Reiseflugbereich</translation>
    </message>
    <message>
        <source>as drawn the tube is crushed to %1 of its free length, beyond what the model covers</source>
        <translation>wie gezeichnet wäre der Schlauch auf %1 seiner freien Länge gestaucht, weiter, als das Modell reicht</translation>
    </message>
    <message>
        <source>no stable rest at %1 g: the tube is crushed to %2 of its free length, beyond what the model covers</source>
        <translation>keine stabile Ruhelage bei %1&#xa0;g: Der Schlauch wird auf %2 seiner freien Länge gestaucht, weiter, als das Modell reicht</translation>
    </message>
    <message>
        <source>no stable rest at %1 g: the tube gives way sideways and the bay buckles</source>
        <translation>keine stabile Ruhelage bei %1&#xa0;g: Der Schlauch weicht seitlich aus, und die Gondel knickt aus</translation>
    </message>
    <message>
        <source>This craft cannot be saved: written out it is larger than the %1 MB that a setup file may have.</source>
        <translation>Dieser Kopter ist nicht zu speichern: ausgeschrieben ist er größer als die %1&#xa0;MB, die eine Datei haben darf.</translation>
    </message>
    <message>
        <source>The craft takes %1 MB as text, a setup file may have %2</source>
        <translation>Der Kopter braucht als Text %1&#xa0;MB, eine Datei darf %2 haben</translation>
    </message>
    <message>
        <source>The lowest mode on the bench lies at %2&#xa0;Hz (%1): below %3&#xa0;Hz the craft&apos;s own steering swings the bay; use a shorter or stiffer tube.</source>
        <translation>Die tiefste Eigenschwingung auf der Werkbank liegt bei %2&#xa0;Hz (%1): Unter %3&#xa0;Hz schaukelt die Steuerung des Kopters die Gondel auf; einen kürzeren oder steiferen Schlauch nehmen.</translation>
    </message>
    <message>
        <source>%1 meets %2&#xa0;Hz (%3)</source>
        <translation>%1 trifft auf %2&#xa0;Hz (%3)</translation>
    </message>
    <message>
        <source>the tubes pass %1 at %2&#xa0;Hz</source>
        <translation>die Schläuche lassen %1 mit %2&#xa0;Hz durch</translation>
    </message>
    <message>
        <source>One tube alone holds the bay; it is all but free in one mode (%1, %2&#xa0;Hz): use three tubes or more.</source>
        <translation>Ein einziger Schlauch hält die Gondel; in einer Eigenschwingung ist sie fast frei (%1, %2&#xa0;Hz): drei oder mehr Schläuche nehmen.</translation>
    </message>
    <message>
        <source>At %1&#xa0;% throttle %2 meets %3&#xa0;Hz (%4), inside the cruise window.</source>
        <translation>Bei %1&#xa0;% Gas trifft %2 auf %3&#xa0;Hz (%4), im Reiseflugbereich.</translation>
    </message>
    <message>
        <source>A tube&apos;s own resonance at %1&#xa0;Hz lies below the highest excitation in cruise (%2&#xa0;Hz): there the tubes pass more than computed.</source>
        <translation>Die Eigenresonanz eines Schlauchs bei %1&#xa0;Hz liegt unter der höchsten Anregung im Reiseflug (%2&#xa0;Hz): Dort lassen die Schläuche mehr durch als berechnet.</translation>
    </message>
    <message>
        <source>surge</source>
        <translation>Längsschwingung</translation>
    </message>
    <message>
        <source>sway</source>
        <translation>Querschwingung</translation>
    </message>
    <message>
        <source>heave</source>
        <translation>Hubschwingung</translation>
    </message>
    <message>
        <source>roll</source>
        <translation>Rollen</translation>
    </message>
    <message>
        <source>pitch</source>
        <translation>Nicken</translation>
    </message>
    <message>
        <source>yaw</source>
        <translation>Gieren</translation>
    </message>
    <message>
        <source>%1: bay %2</source>
        <translation>%1: Gondel %2</translation>
    </message>
    <message>
        <source>%1 and %2: bay %3 and %4</source>
        <translation>%1 und %2: Gondel %3 und %4</translation>
    </message>
    <message>
        <source>stiffness of the arms&apos; roots</source>
        <translation>Steifigkeit am Fuß der Ausleger</translation>
    </message>
    <message>
        <source>tap or droop test of an arm in its joint, ten minutes</source>
        <translation>Klopf- oder Biegeversuch am eingebauten Ausleger, zehn Minuten</translation>
    </message>
    <message>
        <source>pluck test, half an hour</source>
        <translation>Zupfversuch, eine halbe Stunde</translation>
    </message>
    <message>
        <source>Young&apos;s modulus of the tube</source>
        <translation>Elastizitätsmodul des Schlauchs</translation>
    </message>
    <message>
        <source>hang test, ten minutes</source>
        <translation>Hängeversuch, zehn Minuten</translation>
    </message>
    <message>
        <source>dynamic ratio of the tube</source>
        <translation>dynamische Versteifung des Schlauchs</translation>
    </message>
    <message>
        <source>loss factor of the tube</source>
        <translation>Verlustfaktor des Schlauchs</translation>
    </message>
    <message>
        <source>Young&apos;s modulus of the arms</source>
        <translation>Elastizitätsmodul der Ausleger</translation>
    </message>
    <message>
        <source>tap or droop test of an arm, ten minutes</source>
        <translation>Klopf- oder Biegeversuch an einem Ausleger, zehn Minuten</translation>
    </message>
    <message>
        <source>loss factor of the arms</source>
        <translation>Verlustfaktor der Ausleger</translation>
    </message>
    <message>
        <source>tap test of an arm, ten minutes</source>
        <translation>Klopfversuch an einem Ausleger, zehn Minuten</translation>
    </message>
    <message>
        <source>measured throttle against speed, ten minutes</source>
        <translation>Drehzahl über dem Gas messen, zehn Minuten</translation>
    </message>
    <message>
        <source>thrust coefficient of the propeller</source>
        <translation>Schubbeiwert des Propellers</translation>
    </message>
    <message>
        <source>hover throttle of a flight, ten minutes</source>
        <translation>Schwebegas eines Fluges, zehn Minuten</translation>
    </message>
    <message>
        <source>power coefficient of the propeller</source>
        <translation>Leistungsbeiwert des Propellers</translation>
    </message>
    <message>
        <source>moment of inertia of the propeller</source>
        <translation>Trägheitsmoment des Propellers</translation>
    </message>
    <message>
        <source>bifilar pendulum, a quarter of an hour</source>
        <translation>Zweifadenpendel, eine Viertelstunde</translation>
    </message>
    <message>
        <source>KV of the motors</source>
        <translation>KV der Motoren</translation>
    </message>
    <message>
        <source>unbalance of the propellers</source>
        <translation>Unwucht der Propeller</translation>
    </message>
    <message>
        <source>balance the propellers, half an hour</source>
        <translation>Propeller auswuchten, eine halbe Stunde</translation>
    </message>
    <message>
        <source>less than %1&#xa0;%</source>
        <translation>weniger als %1&#xa0;%</translation>
    </message>
    <message>
        <source>Worst wobble in cruise, from full to empty pack: %1&#xa0;px in the middle; 1 of 10 stays below %2&#xa0;px, and 9 of 10 stay below %3&#xa0;px.</source>
        <translation>Größtes Wackeln im Reiseflug, von vollem bis leerem Akku: %1&#xa0;px in der Mitte; 1 von 10 bleibt unter %2&#xa0;px, 9 von 10 bleiben unter %3&#xa0;px.</translation>
    </message>
    <message>
        <source>Worst wobble in cruise, from full to empty pack: %1&#xa0;px in the middle; 1 of 10 stays below %2&#xa0;px, and more than 1 of 10 cannot be flown.</source>
        <translation>Größtes Wackeln im Reiseflug, von vollem bis leerem Akku: %1&#xa0;px in der Mitte; 1 von 10 bleibt unter %2&#xa0;px, und mehr als 1 von 10 kann man nicht fliegen.</translation>
    </message>
    <message>
        <source>Half of the crafts or more cannot be flown.</source>
        <translation>Die Hälfte der Kopter oder mehr kann man nicht fliegen.</translation>
    </message>
    <message>
        <source>No throttle in cruise is bad.</source>
        <translation>Bei keinem Gas im Reiseflug wackelt es stark.</translation>
    </message>
    <message>
        <source>Where it is bad, that begins at %1&#xa0;% throttle in the middle, at %2&#xa0;% to %3&#xa0;% in 8 of 10, and ends at %4&#xa0;% in the middle, at %5&#xa0;% to %6&#xa0;% in 8 of 10.</source>
        <translation>Wo es stark wackelt, beginnt das in der Mitte bei %1&#xa0;% Gas, bei 8 von 10 bei %2&#xa0;% bis %3&#xa0;%, und endet in der Mitte bei %4&#xa0;%, bei 8 von 10 bei %5&#xa0;% bis %6&#xa0;%.</translation>
    </message>
    <message>
        <source>%1 of where bad begins, %2 of where it ends</source>
        <translation>%1 beim Beginn des starken Wackelns, %2 beim Ende</translation>
    </message>
    <message>
        <source>Of 100 crafts that fit what is known of this one, %1 are clean in cruise, %2 faint and %3 bad; %4 cannot be flown.</source>
        <translation>Von 100 Koptern, die zu dem passen, was von diesem bekannt ist, sind im Reiseflug %1 sauber, %2 schwach und %3 stark wackelnd; %4 kann man nicht fliegen.</translation>
    </message>
    <message>
        <source>%1: %2: takes away %3 of the uncertainty</source>
        <translation>%1: %2: senkt die Unsicherheit um %3</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>From build to build (cut, masses, battery, temperature): %1, which no measurement takes away.</source>
        <translation>Streuung der Nachbauten (Zuschnitt, Massen, Akku, Temperatur): %1; daran ändert keine Messung etwas.</translation>
    </message>
    <message>
        <source>Let go, the bay moves %1&#xa0;mm from where it is drawn, and hits after %2&#xa0;mm: hang it level, or change stretch or elevation.</source>
        <translation>Losgelassen bewegt sich die Gondel %1&#xa0;mm aus ihrer gezeichneten Lage und stößt nach %2&#xa0;mm an: waagerecht aufhängen oder Dehnung oder Neigung ändern.</translation>
    </message>
    <message>
        <source>The craft hovers at %1&#xa0;% throttle with the full pack, outside its cruise window of %2 to %3&#xa0;%: what is said of cruise is not about how it flies.</source>
        <translation>Der Kopter schwebt mit vollem Akku bei %1&#xa0;% Gas, außerhalb seines Reiseflugbereichs von %2 bis %3&#xa0;%: Was über den Reiseflug gesagt wird, gilt nicht für diesen Flug.</translation>
    </message>
    <message>
        <source>the bay leaves its drawn place</source>
        <translation>die Gondel verlässt ihre gezeichnete Lage</translation>
    </message>
    <message>
        <source>it does not hover in its cruise window</source>
        <translation>er schwebt nicht in seinem Reiseflugbereich</translation>
    </message>
    <message>
        <source>Worst frame shake in the cruise window: %1&#xa0;px at %2&#xa0;% throttle.</source>
        <translation>Größtes Zittern ganzer Bilder im Reiseflugbereich: %1&#xa0;px bei %2&#xa0;% Gas.</translation>
    </message>
    <message>
        <source>Do not fly: %1</source>
        <translation>Nicht fliegen: %1</translation>
    </message>
    <message>
        <source>Do not fly: %1, and %2 more</source>
        <translation>Nicht fliegen: %1, und %2 weitere Gründe</translation>
    </message>
    <message>
        <source>Not about this flight: %1</source>
        <translation>Gilt nicht für diesen Flug: %1</translation>
    </message>
    <message>
        <source>Clean in cruise: at most %1&#xa0;px</source>
        <translation>Sauber im Reiseflug: höchstens %1&#xa0;px</translation>
    </message>
    <message>
        <source>Faint wobble in cruise: up to %1&#xa0;px</source>
        <translation>Schwaches Wackeln im Reiseflug: bis %1&#xa0;px</translation>
    </message>
    <message>
        <source>Bad wobble in cruise: up to %1&#xa0;px</source>
        <translation>Starkes Wackeln im Reiseflug: bis %1&#xa0;px</translation>
    </message>
    <message>
        <source>Not about this flight: %1.</source>
        <translation>Gilt nicht für diesen Flug: %1.</translation>
    </message>
    <message>
        <source>Do not fly, whatever the tune: %1.</source>
        <translation>Nicht fliegen, gleich mit welcher Abstimmung: %1.</translation>
    </message>
    <message>
        <source>Worst wobble in the cruise window: %1&#xa0;px at %2&#xa0;% throttle with the full pack, %3&#xa0;px at %4&#xa0;% with the empty one.</source>
        <translation>Größtes Wackeln im Reiseflugbereich: %1&#xa0;px bei %2&#xa0;% Gas mit vollem Akku, %3&#xa0;px bei %4&#xa0;% mit leerem.</translation>
    </message>
    <message>
        <source>The hardness of %1&#xa0;Shore&#xa0;A lies outside %2 to %3, where it tells the modulus: measure the tube by a hang test.</source>
        <translation>Die Härte von %1&#xa0;Shore&#xa0;A liegt außerhalb von %2 bis %3, wo sie den Elastizitätsmodul angibt: den Schlauch mit einem Hängeversuch messen.</translation>
    </message>
    <message>
        <source>The bay still moves %1&#xa0;mm and turns %2°.</source>
        <translation>Die Gondel verschiebt sich noch um %1&#xa0;mm und dreht sich um %2°.</translation>
    </message>
    <message>
        <source>The bay still sinks %1&#xa0;mm and turns %2°.</source>
        <translation>Die Gondel sinkt noch um %1&#xa0;mm und dreht sich um %2°.</translation>
    </message>
    <message>
        <source>The bay still rises %1&#xa0;mm and turns %2°.</source>
        <translation>Die Gondel steigt noch um %1&#xa0;mm und dreht sich um %2°.</translation>
    </message>
    <message>
        <source>The bay weighs %1&#xa0;N, more than the %2&#xa0;N that its tubes can pull upwards at most.</source>
        <translation>Die Gondel wiegt %1&#xa0;N, mehr als die %2&#xa0;N, die ihre Schläuche höchstens nach oben ziehen können.</translation>
    </message>
    <message>
        <source>Seen from above, the bay&apos;s centre of mass lies outside of its tubes.</source>
        <translation>Von oben gesehen liegt der Schwerpunkt der Gondel außerhalb ihrer Schläuche.</translation>
    </message>
    <message>
        <source>no finite answer: the craft is undamped and exactly on a resonance, or its arms are far too soft</source>
        <translation>kein endliches Ergebnis: Der Kopter ist ungedämpft und genau auf einer Resonanz, oder seine Ausleger sind viel zu weich</translation>
    </message>
    <message>
        <source>%1 is decided by keeping the bay level</source>
        <translation>%1 ergibt sich daraus, dass die Gondel waagerecht hängt</translation>
    </message>
    <message>
        <source>From the arm&apos;s middle line up to the middle of the motor; negative when it hangs below.</source>
        <translation>Von der Mittellinie des Auslegers hinauf zur Mitte des Motors; negativ, wenn er darunter hängt.</translation>
    </message>
    <message>
        <source>The motor&apos;s body across, by calliper; empty to estimate it from the mass.</source>
        <translation>Durchmesser des Motorgehäuses, mit dem Messschieber; leer: aus der Masse geschätzt.</translation>
    </message>
    <message>
        <source>Body height</source>
        <translation>Gehäusehöhe</translation>
    </message>
    <message>
        <source>The motor&apos;s body from its foot to its top, without shaft and nut; empty to estimate it from the diameter.</source>
        <translation>Das Motorgehäuse vom Fuß bis oben, ohne Welle und Mutter; leer: aus dem Durchmesser geschätzt.</translation>
    </message>
    <message>
        <source>Moment of inertia</source>
        <translation>Trägheitsmoment</translation>
    </message>
    <message>
        <source>How hard the propeller is to spin up about its axis, from a swing on two threads; empty to estimate it from mass and diameter.</source>
        <translation>Wie schwer der Propeller um seine Achse in Drehung zu bringen ist, aus dem Schwingen an zwei Fäden; leer: aus Masse und Durchmesser geschätzt.</translation>
    </message>
    <message>
        <source>From the arm&apos;s middle line up to the middle of the blades; negative when they turn below, empty for the motor&apos;s height.</source>
        <translation>Von der Mittellinie des Auslegers hinauf zur Mitte der Blätter; negativ, wenn sie darunter drehen, leer: die Höhe des Motors.</translation>
    </message>
    <message>
        <source>Own free length</source>
        <translation>Eigene freie Länge</translation>
    </message>
    <message>
        <source>Length of this one relaxed tube between its two clamps; empty where it is cut like the others.</source>
        <translation>Länge dieses einen entspannten Schlauchs zwischen seinen beiden Klemmen; leer, wenn er wie die anderen geschnitten ist.</translation>
    </message>
    <message>
        <source>Own stretch</source>
        <translation>Eigene Dehnung</translation>
    </message>
    <message>
        <source>How much longer this one tube is fitted than its free length; empty where it is stretched like the others, and once the holes are drilled.</source>
        <translation>Um wie viel länger als seine freie Länge dieser eine Schlauch eingebaut ist; leer, wenn er wie die anderen gedehnt ist und sobald gebohrt ist.</translation>
    </message>
    <message>
        <source>Spread</source>
        <translation>Streuung</translation>
    </message>
    <message>
        <source>How far the value may be off, one standard deviation over the value: 0.05 is 5 %; empty for what is usual of its origin.</source>
        <translation>Wie weit der Wert danebenliegen kann, eine Standardabweichung durch den Wert: 0,05 sind 5&#xa0;%; leer: das Übliche seiner Herkunft.</translation>
    </message>
    <message>
        <source>Ends</source>
        <translation>Enden</translation>
    </message>
    <message>
        <source>Lens</source>
        <translation>Objektiv</translation>
    </message>
    <message>
        <source>Origin</source>
        <translation>Herkunft</translation>
    </message>
    <message>
        <source>%1 is %2, allowed %3, %4, %5 or %6</source>
        <translation>%1 ist %2, erlaubt sind %3, %4, %5 oder %6</translation>
    </message>
    <message>
        <source>%1 is %2, allowed %3 or %4</source>
        <translation>%1 ist %2, erlaubt ist %3 oder %4</translation>
    </message>
    <message>
        <source>%1 is none of %2, %3, %4 and %5</source>
        <translation>%1 ist weder %2 noch %3, %4 oder %5</translation>
    </message>
    <message>
        <source>%1 is neither %2 nor %3</source>
        <translation>%1 ist weder %2 noch %3</translation>
    </message>
    <message>
        <source>Horizontal field of view is %1, must not exceed %2 unless the lens is a fisheye</source>
        <translation>Der waagerechte Bildwinkel ist %1, darf aber %2 nicht überschreiten, außer bei einem Fischaugenobjektiv</translation>
    </message>
    <message>
        <source>Two sources are of the same number</source>
        <translation>Zwei Herkunftsangaben gelten derselben Zahl</translation>
    </message>
    <message>
        <source>at %1</source>
        <translation>bei %1</translation>
    </message>
    <message>
        <source>Mount points %1&#xa0;mm lower</source>
        <translation>Haltepunkte %1&#xa0;mm tiefer</translation>
    </message>
    <message>
        <source>Mount points %1&#xa0;mm higher</source>
        <translation>Haltepunkte %1&#xa0;mm höher</translation>
    </message>
    <message>
        <source>Mount points %1&#xa0;mm nearer to the middle, fore and aft</source>
        <translation>Haltepunkte längs %1&#xa0;mm näher zur Mitte</translation>
    </message>
    <message>
        <source>Mount points %1&#xa0;mm farther from the middle, fore and aft</source>
        <translation>Haltepunkte längs %1&#xa0;mm weiter von der Mitte</translation>
    </message>
    <message>
        <source>Mount points %1&#xa0;mm nearer to the middle, sideways</source>
        <translation>Haltepunkte quer %1&#xa0;mm näher zur Mitte</translation>
    </message>
    <message>
        <source>Mount points %1&#xa0;mm farther from the middle, sideways</source>
        <translation>Haltepunkte quer %1&#xa0;mm weiter von der Mitte</translation>
    </message>
    <message>
        <source>Tubes turned %1° towards fore and aft</source>
        <translation>Schläuche %1° weiter zur Längsrichtung gedreht</translation>
    </message>
    <message>
        <source>Tubes turned %1° towards the sides</source>
        <translation>Schläuche %1° weiter zur Querrichtung gedreht</translation>
    </message>
    <message>
        <source>Heaviest part of the bay %1&#xa0;mm back</source>
        <translation>Schwerstes Teil der Gondel %1&#xa0;mm nach hinten</translation>
    </message>
    <message>
        <source>Heaviest part of the bay %1&#xa0;mm forward</source>
        <translation>Schwerstes Teil der Gondel %1&#xa0;mm nach vorn</translation>
    </message>
    <message>
        <source>Heaviest part of the bay %1&#xa0;mm lower</source>
        <translation>Schwerstes Teil der Gondel %1&#xa0;mm tiefer</translation>
    </message>
    <message>
        <source>Heaviest part of the bay %1&#xa0;mm higher</source>
        <translation>Schwerstes Teil der Gondel %1&#xa0;mm höher</translation>
    </message>
    <message>
        <source>outside of cruise %1&#xa0;px at %2&#xa0;% throttle</source>
        <translation>außerhalb des Reiseflugs %1&#xa0;px bei %2&#xa0;% Gas</translation>
    </message>
    <message>
        <source>May the free length of all tubes change?</source>
        <translation>Darf sich die freie Länge aller Schläuche ändern?</translation>
    </message>
    <message>
        <source>May the stretch of all tubes change? Their holes in the airframe move with it.</source>
        <translation>Darf sich die Dehnung aller Schläuche ändern? Ihre Bohrungen im Rahmen wandern mit.</translation>
    </message>
    <message>
        <source>May the elevation of all tubes change? Their holes in the airframe move with it.</source>
        <translation>Darf sich die Neigung aller Schläuche ändern? Ihre Bohrungen im Rahmen wandern mit.</translation>
    </message>
    <message>
        <source>Height of the points</source>
        <translation>Höhe der Haltepunkte</translation>
    </message>
    <message>
        <source>May all mount points move up or down together? Their holes in the airframe move with them.</source>
        <translation>Dürfen alle Haltepunkte gemeinsam höher oder tiefer sitzen? Ihre Bohrungen im Rahmen wandern mit.</translation>
    </message>
    <message>
        <source>Direction of the tubes</source>
        <translation>Richtung der Schläuche</translation>
    </message>
    <message>
        <source>May the tubes point more sideways or more fore and aft, mirrored? Their holes in the airframe move with them.</source>
        <translation>Dürfen die Schläuche mehr quer oder mehr längs zeigen, gespiegelt? Ihre Bohrungen im Rahmen wandern mit.</translation>
    </message>
    <message>
        <source>May the mount points move apart or together fore and aft? Half their distance; mirrored ones stay mirrored.</source>
        <translation>Dürfen die Haltepunkte längs weiter auseinander oder enger sitzen? Angegeben ist ihr halber Abstand; gespiegelte bleiben gespiegelt.</translation>
    </message>
    <message>
        <source>May the mount points move apart or together sideways? Half their distance; mirrored ones stay mirrored.</source>
        <translation>Dürfen die Haltepunkte quer weiter auseinander oder enger sitzen? Angegeben ist ihr halber Abstand; gespiegelte bleiben gespiegelt.</translation>
    </message>
    <message>
        <source>Heaviest part forward</source>
        <translation>Schwerstes Teil nach vorn</translation>
    </message>
    <message>
        <source>May the bay&apos;s heaviest part move forward or back? Where its middle is.</source>
        <translation>Darf das schwerste Teil der Gondel nach vorn oder hinten rücken? Angegeben ist seine Mitte.</translation>
    </message>
    <message>
        <source>Heaviest part up</source>
        <translation>Schwerstes Teil nach oben</translation>
    </message>
    <message>
        <source>May the bay&apos;s heaviest part move up or down? Where its middle is.</source>
        <translation>Darf das schwerste Teil der Gondel höher oder tiefer sitzen? Angegeben ist seine Mitte.</translation>
    </message>
    <message>
        <source>Place of the heaviest part</source>
        <translation>Ort des schwersten Teils</translation>
    </message>
    <message>
        <source>Where the middle of the bay&apos;s heaviest part sits with this tune: forward, left, up; empty to leave it where it is.</source>
        <translation>Wo die Mitte des schwersten Teils der Gondel bei dieser Abstimmung sitzt: nach vorn, links, oben; leer, um es zu lassen, wo es ist.</translation>
    </message>
    <message>
        <source>Half spread, fore and aft</source>
        <translation>Halber Abstand längs</translation>
    </message>
    <message>
        <source>Half spread, sideways</source>
        <translation>Halber Abstand quer</translation>
    </message>
    <message>
        <source>Pine</source>
        <translation>Kiefer</translation>
    </message>
    <message>
        <source>Spruce</source>
        <translation>Fichte</translation>
    </message>
    <message>
        <source>Beech</source>
        <translation>Buche</translation>
    </message>
    <message>
        <source>Birch plywood</source>
        <translation>Birkensperrholz</translation>
    </message>
    <message>
        <source>Aluminium 6061-T6</source>
        <translation>Aluminium 6061-T6</translation>
    </message>
    <message>
        <source>Glass-fibre laminate G10</source>
        <translation>Glasfaserlaminat G10</translation>
    </message>
    <message>
        <source>Carbon tube, pultruded</source>
        <translation>Kohlefaserrohr, pultrudiert</translation>
    </message>
    <message>
        <source>Carbon tube, wrapped cloth</source>
        <translation>Kohlefaserrohr, aus Gewebe gewickelt</translation>
    </message>
    <message>
        <source>Carbon plate, woven</source>
        <translation>Kohlefaserplatte, Gewebe</translation>
    </message>
    <message>
        <source>Sandwich board, glass on foam</source>
        <translation>Sandwichplatte, Glasfaser auf Schaum</translation>
    </message>
    <message>
        <source>Board camera, wide view</source>
        <translation>Platinenkamera, Weitwinkel</translation>
    </message>
    <message>
        <source>Small action camera</source>
        <translation>Kleine Actionkamera</translation>
    </message>
    <message>
        <source>Action camera, straight view</source>
        <translation>Actionkamera, geradlinig abbildend</translation>
    </message>
    <message>
        <source>Action camera, wide fisheye view</source>
        <translation>Actionkamera, weites Fischauge</translation>
    </message>
    <message>
        <source>Compact camera</source>
        <translation>Kompaktkamera</translation>
    </message>
    <message>
        <source>Mirrorless camera, sensor 24&#xa0;mm wide</source>
        <translation>Spiegellose Kamera, Sensor 24&#xa0;mm breit</translation>
    </message>
    <message>
        <source>Mirrorless camera, sensor 36&#xa0;mm wide</source>
        <translation>Spiegellose Kamera, Sensor 36&#xa0;mm breit</translation>
    </message>
    <message>
        <source>Mapping camera, global shutter</source>
        <translation>Kartierungskamera, Global Shutter</translation>
    </message>
    <message>
        <source>Thermal camera</source>
        <translation>Wärmebildkamera</translation>
    </message>
    <message>
        <source>Stator 18 to 20&#xa0;mm</source>
        <translation>Stator 18 bis 20&#xa0;mm</translation>
    </message>
    <message>
        <source>Stator 22&#xa0;mm</source>
        <translation>Stator 22&#xa0;mm</translation>
    </message>
    <message>
        <source>Stator 23&#xa0;mm, tall</source>
        <translation>Stator 23&#xa0;mm, hoch</translation>
    </message>
    <message>
        <source>Stator 28&#xa0;mm, low</source>
        <translation>Stator 28&#xa0;mm, flach</translation>
    </message>
    <message>
        <source>Stator 28&#xa0;mm, tall</source>
        <translation>Stator 28&#xa0;mm, hoch</translation>
    </message>
    <message>
        <source>Stator 35&#xa0;mm</source>
        <translation>Stator 35&#xa0;mm</translation>
    </message>
    <message>
        <source>Stator 40&#xa0;mm</source>
        <translation>Stator 40&#xa0;mm</translation>
    </message>
    <message>
        <source>Lithium-polymer pack, %1 cells, %2&#xa0;Ah</source>
        <translation>Lithium-Polymer-Akku, %1 Zellen, %2&#xa0;Ah</translation>
    </message>
    <message>
        <source>Pack of round lithium-ion cells, %1 in series, %2&#xa0;Ah</source>
        <translation>Akku aus Lithium-Ionen-Rundzellen, %1 in Reihe, %2&#xa0;Ah</translation>
    </message>
    <message>
        <source>Cut-out share</source>
        <translation>Anteil der Ausschnitte</translation>
    </message>
    <message>
        <source>Plastic propeller %1 × %2&#xa0;in, %3 blades</source>
        <translation>Kunststoffpropeller %1 × %2&#xa0;Zoll, %3 Blätter</translation>
    </message>
    <message>
        <source>Carbon propeller %1 × %2&#xa0;in, %3 blades</source>
        <translation>Kohlefaserpropeller %1 × %2&#xa0;Zoll, %3 Blätter</translation>
    </message>
    <message>
        <source>Tube %1 × %2&#xa0;mm, Shore A %3</source>
        <translation>Schlauch %1 × %2&#xa0;mm, Shore A %3</translation>
    </message>
    <message>
        <source>length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>stretch</source>
        <translation>Dehnung</translation>
    </message>
    <message>
        <source>elevation</source>
        <translation>Neigung</translation>
    </message>
    <message>
        <source>hardness</source>
        <translation>Härte</translation>
    </message>
    <message>
        <source>diameter</source>
        <translation>Durchmesser</translation>
    </message>
    <message>
        <source>height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>direction</source>
        <translation>Richtung</translation>
    </message>
    <message>
        <source>spread fore and aft</source>
        <translation>Abstand längs</translation>
    </message>
    <message>
        <source>spread sideways</source>
        <translation>Abstand quer</translation>
    </message>
    <message>
        <source>balance fore and aft</source>
        <translation>schwerstes Teil längs</translation>
    </message>
    <message>
        <source>balance upwards</source>
        <translation>schwerstes Teil hoch</translation>
    </message>
    <message>
        <source>Sideways, the tubes hold the bay within %1&#xa0;mm of the height of its centre of mass</source>
        <translation>Quer halten die Schläuche die Gondel auf der Höhe ihres Schwerpunkts (auf %1&#xa0;mm genau)</translation>
    </message>
    <message>
        <source>Sideways, the tubes hold the bay %1&#xa0;mm above its centre of mass, so sideways vibration rolls it</source>
        <translation>Quer halten die Schläuche die Gondel %1&#xa0;mm über ihrem Schwerpunkt, deshalb bringen Querschwingungen sie ins Rollen</translation>
    </message>
    <message>
        <source>Sideways, the tubes hold the bay %1&#xa0;mm below its centre of mass, so sideways vibration rolls it</source>
        <translation>Quer halten die Schläuche die Gondel %1&#xa0;mm unter ihrem Schwerpunkt, deshalb bringen Querschwingungen sie ins Rollen</translation>
    </message>
    <message>
        <source>fore and aft within %1&#xa0;mm of that height</source>
        <translation>längs ebenfalls auf dieser Höhe (auf %1&#xa0;mm genau)</translation>
    </message>
    <message>
        <source>fore and aft %1&#xa0;mm above, so fore-and-aft vibration pitches it</source>
        <translation>längs %1&#xa0;mm darüber, deshalb bringen Längsschwingungen sie ins Nicken</translation>
    </message>
    <message>
        <source>fore and aft %1&#xa0;mm below, so fore-and-aft vibration pitches it</source>
        <translation>längs %1&#xa0;mm darunter, deshalb bringen Längsschwingungen sie ins Nicken</translation>
    </message>
    <message>
        <source>%1&#xa0;mm ahead</source>
        <translation>%1&#xa0;mm davor</translation>
    </message>
    <message>
        <source>%1&#xa0;mm behind</source>
        <translation>%1&#xa0;mm dahinter</translation>
    </message>
    <message>
        <source>%1&#xa0;mm to the left</source>
        <translation>%1&#xa0;mm links davon</translation>
    </message>
    <message>
        <source>%1&#xa0;mm to the right</source>
        <translation>%1&#xa0;mm rechts davon</translation>
    </message>
    <message>
        <source>Up and down, they hold it %1 and %2, seen from its centre of mass, so up-and-down vibration pitches and rolls it.</source>
        <translation>Auf und ab halten sie die Gondel, vom Schwerpunkt aus gesehen, %1 und %2, deshalb bringen Schwingungen auf und ab sie ins Nicken und Rollen.</translation>
    </message>
    <message>
        <source>Up and down, they hold it %1, seen from its centre of mass, so up-and-down vibration pitches it.</source>
        <translation>Auf und ab halten sie die Gondel, vom Schwerpunkt aus gesehen, %1, deshalb bringen Schwingungen auf und ab sie ins Nicken.</translation>
    </message>
    <message>
        <source>Up and down, they hold it %1, seen from its centre of mass, so up-and-down vibration rolls it.</source>
        <translation>Auf und ab halten sie die Gondel, vom Schwerpunkt aus gesehen, %1, deshalb bringen Schwingungen auf und ab sie ins Rollen.</translation>
    </message>
    <message>
        <source>%1; %2.</source>
        <translation>%1; %2.</translation>
    </message>
    <message>
        <source>Decoupling %1&#xa0;%: so much of its energy a bench mode has, on average, in one motion.</source>
        <translation>Entkopplung %1&#xa0;%: So viel der Energie einer Eigenschwingung auf der Werkbank steckt im Mittel in einer einzigen Bewegung.</translation>
    </message>
    <message>
        <source>Hung level: each tube with its own free length</source>
        <translation>Waagerecht aufgehängt: jeder Schlauch mit eigener freier Länge</translation>
    </message>
    <message>
        <source>Hung level: each tube at its own elevation</source>
        <translation>Waagerecht aufgehängt: jeder Schlauch mit eigener Neigung</translation>
    </message>
    <message>
        <source>%1 of 100 crafts like it are clean</source>
        <translation>%1 von 100 solchen Koptern sind sauber</translation>
    </message>
    <message>
        <source>%1 of 100 crafts like it are clean, %2 cannot be flown</source>
        <translation>%1 von 100 solchen Koptern sind sauber, %2 sind nicht zu fliegen</translation>
    </message>
    <message>
        <source>With the empty pack, at %1 % throttle: %2.</source>
        <translation>Mit leerem Akku, bei %1&#xa0;% Gas: %2.</translation>
    </message>
    <message>
        <source>At %1 throttle: %2.</source>
        <translation>Bei %1 Gas: %2.</translation>
    </message>
    <message>
        <source>Full pack %1 px at %2 %, empty pack %3 px at %4 % throttle.</source>
        <translation>Voller Akku %1&#xa0;px bei %2&#xa0;%, leerer %3&#xa0;px bei %4&#xa0;% Gas.</translation>
    </message>
    <message>
        <source>the table has %1 rows, more than %2</source>
        <translation>die Tabelle hat %1 Zeilen, mehr als %2</translation>
    </message>
    <message>
        <source>the table has %1 columns, more than %2</source>
        <translation>die Tabelle hat %1 Spalten, mehr als %2</translation>
    </message>
    <message>
        <source>the table has more than %1 bytes, far more than one that was written by hand</source>
        <translation>die Tabelle hat mehr als %1 Bytes, weit mehr als eine von Hand geschriebene</translation>
    </message>
    <message>
        <source>this is not plain text: save the table as CSV in UTF-8</source>
        <translation>das ist kein einfacher Text: die Tabelle als CSV in UTF-8 speichern</translation>
    </message>
    <message>
        <source>no row of the table has numbers in it</source>
        <translation>in keiner Zeile der Tabelle stehen Zahlen</translation>
    </message>
    <message>
        <source>a quotation mark of the table is never closed</source>
        <translation>ein Anführungszeichen der Tabelle wird nie geschlossen</translation>
    </message>
    <message>
        <source>fewer than three rows tell how fast the propeller turns: that takes a column of speed, or of throttle and of voltage</source>
        <translation>weniger als drei Zeilen sagen, wie schnell sich der Propeller dreht: Dazu braucht es eine Spalte mit Drehzahl oder mit Gas und mit Spannung</translation>
    </message>
    <message>
        <source>fewer than three rows that tell a speed have a thrust or a power</source>
        <translation>weniger als drei Zeilen mit Drehzahl haben einen Schub oder eine Leistung</translation>
    </message>
    <message>
        <source>the thrust does not grow with the speed</source>
        <translation>der Schub wächst nicht mit der Drehzahl</translation>
    </message>
    <message>
        <source>the power does not grow with the speed</source>
        <translation>die Leistung wächst nicht mit der Drehzahl</translation>
    </message>
    <message>
        <source>The table has no speeds: they are worked out from throttle, voltage and current with the craft&apos;s KV, whose spread counts.</source>
        <translation>Die Tabelle hat keine Drehzahlen: Sie sind aus Gas, Spannung und Strom mit dem KV des Kopters berechnet, dessen Streuung zählt.</translation>
    </message>
    <message>
        <source>The table has no speeds: they are worked out from throttle and voltage with the craft&apos;s KV and power coefficient, whose spread counts.</source>
        <translation>Die Tabelle hat keine Drehzahlen: Sie sind aus Gas und Spannung mit KV und Leistungsbeiwert des Kopters berechnet, deren Streuung zählt.</translation>
    </message>
    <message>
        <source>The power is electric: what the motor loses is taken off with the craft&apos;s resistance and no-load current.</source>
        <translation>Die Leistung ist elektrisch: Was der Motor verliert, ist mit Widerstand und Leerlaufstrom des Kopters abgezogen.</translation>
    </message>
    <message>
        <source>The thrust coefficient goes from %1 at %2 rpm to %3 at %4 rpm; the craft has one for all speeds, so its spread is larger.</source>
        <translation>Der Schubbeiwert geht von %1 bei %2&#xa0;U/min bis %3 bei %4&#xa0;U/min; der Kopter hat einen für alle Drehzahlen, deshalb ist seine Streuung größer.</translation>
    </message>
    <message>
        <source>The power coefficient goes from %1 at %2 rpm to %3 at %4 rpm; the craft has one for all speeds, so its spread is larger.</source>
        <translation>Der Leistungsbeiwert geht von %1 bei %2&#xa0;U/min bis %3 bei %4&#xa0;U/min; der Kopter hat einen für alle Drehzahlen, deshalb ist seine Streuung größer.</translation>
    </message>
    <message>
        <source>KV runs with the speed: the throttle noted is not the share of the voltage that the motor gets. Trust the row at full throttle most.</source>
        <translation>KV ändert sich mit der Drehzahl: Das notierte Gas ist nicht der Anteil der Spannung, den der Motor bekommt. Am meisten zählt die Zeile bei Vollgas.</translation>
    </message>
    <message>
        <source>Left out, because the thrust lies far off the fit: line %1.</source>
        <translation>Ausgelassen, weil der Schub weit neben der Ausgleichskurve liegt: Zeile %1.</translation>
    </message>
    <message>
        <source>Left out, because the power lies far off the fit: line %1.</source>
        <translation>Ausgelassen, weil die Leistung weit neben der Ausgleichskurve liegt: Zeile %1.</translation>
    </message>
    <message>
        <source>Left out of KV, because it lies far off the rest: line %1.</source>
        <translation>Bei KV ausgelassen, weil weit neben den anderen: Zeile %1.</translation>
    </message>
    <message>
        <source>“%1” is no throttle from none to full</source>
        <translation>„%1“ ist kein Gas zwischen null und voll</translation>
    </message>
    <message>
        <source>“%1” is below zero</source>
        <translation>„%1“ liegt unter null</translation>
    </message>
    <message>
        <source>Not used</source>
        <translation>Nicht benutzt</translation>
    </message>
    <message>
        <source>Throttle</source>
        <translation>Gas</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Drehzahl</translation>
    </message>
    <message>
        <source>Thrust</source>
        <translation>Schub</translation>
    </message>
    <message>
        <source>Shaft power</source>
        <translation>Wellenleistung</translation>
    </message>
    <message>
        <source>Electric power</source>
        <translation>Elektrische Leistung</translation>
    </message>
    <message>
        <source>Torque</source>
        <translation>Drehmoment</translation>
    </message>
    <message>
        <source>Voltage</source>
        <translation>Spannung</translation>
    </message>
    <message>
        <source>Current</source>
        <translation>Strom</translation>
    </message>
    <message>
        <source>“%1” is not a number</source>
        <translation>„%1“ ist keine Zahl</translation>
    </message>
    <message>
        <source>Bay mass</source>
        <translation>Masse der Gondel</translation>
    </message>
    <message>
        <source>Tubes fore and aft</source>
        <translation>Abstand der Schläuche längs</translation>
    </message>
    <message>
        <source>Tubes left and right</source>
        <translation>Abstand der Schläuche quer</translation>
    </message>
    <message>
        <source>%1 stands beside an airframe hole: a tube has a hole or two angles</source>
        <translation>%1 steht neben einer Bohrung im Rahmen: Ein Schlauch hat eine Bohrung oder zwei Winkel</translation>
    </message>
    <message>
        <source>%1 has %2 bytes, allowed up to %3</source>
        <translation>%1 hat %2 Bytes, erlaubt sind bis zu %3</translation>
    </message>
    <message>
        <source>%1 has 1 entry, allowed %2</source>
        <translation>%1 hat 1 Eintrag, erlaubt sind %2</translation>
    </message>
    <message>
        <source>The time of keeping is %1, must read like 2026-05-01T10:00:00Z or be empty</source>
        <translation>Die Zeit des Merkens ist %1, muss wie 2026-05-01T10:00:00Z lauten oder leer sein</translation>
    </message>
    <message>
        <source>Stretch is %1, must be left out in a drilled craft, whose holes decide it</source>
        <translation>Die Dehnung ist %1, muss aber bei einem gebohrten Kopter fehlen: Seine Bohrungen bestimmen sie</translation>
    </message>
    <message>
        <source>Some tubes have an airframe hole and others a direction and an elevation; all must have the same</source>
        <translation>Einige Schläuche haben eine Bohrung im Rahmen, andere Richtung und Neigung; alle müssen dasselbe haben</translation>
    </message>
    <message>
        <source>The name</source>
        <translation>Der Name</translation>
    </message>
    <message>
        <source>The text of the notes</source>
        <translation>Der Text der Notizen</translation>
    </message>
    <message>
        <source>The time of keeping</source>
        <translation>Die Zeit des Merkens</translation>
    </message>
    <message>
        <source>The date of a source</source>
        <translation>Das Datum einer Quelle</translation>
    </message>
    <message>
        <source>The list of parts</source>
        <translation>Die Liste der Teile</translation>
    </message>
    <message>
        <source>The list of arms</source>
        <translation>Die Liste der Ausleger</translation>
    </message>
    <message>
        <source>The list of tubes</source>
        <translation>Die Liste der Schläuche</translation>
    </message>
    <message>
        <source>The list of kept tunes</source>
        <translation>Die Liste der gemerkten Abstimmungen</translation>
    </message>
    <message>
        <source>The list of sources</source>
        <translation>Die Liste der Quellen</translation>
    </message>
    <message>
        <source>The list of blade-pass pulses</source>
        <translation>Die Liste der Stöße je Blattdurchgang</translation>
    </message>
    <message>
        <source>The propellers touch: the circles of two of them overlap by %1 mm. Take longer arms or smaller propellers.</source>
        <translation>Die Propeller berühren sich: Die Kreise von zweien überschneiden sich um %1&#xa0;mm. Längere Ausleger oder kleinere Propeller nehmen.</translation>
    </message>
    <message>
        <source>the propellers touch</source>
        <translation>die Propeller berühren sich</translation>
    </message>
    <message>
        <source>Common practice, no source: follows from what was entered when the craft was begun</source>
        <translation>Gängige Praxis, ohne Quelle: folgt aus dem, was beim Anlegen des Kopters angegeben wurde</translation>
    </message>
    <message>
        <source>Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-282), chapter 5: red pine, Sitka spruce, American beech at 12&#xa0;% moisture, specific gravity and bending modulus; 10&#xa0;% added for shear, ratio of the shear modulus (beech: that of maple) and spread from memory; loss factor from a logarithmic decrement of 0.02 to 0.1, from memory</source>
        <translation>Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-282), Kapitel 5: amerikanische Rotkiefer, Sitka-Fichte und Buche bei 12&#xa0;% Feuchte, Dichtezahl und Biegemodul; 10&#xa0;% für Schub zugeschlagen, Verhältnis zum Schubmodul (Buche: das des Ahorns) und Streuung aus dem Gedächtnis; Verlustfaktor aus einem logarithmischen Dekrement von 0,02 bis 0,1, aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>Mechanical properties of carbon fibre composite materials, fibre and epoxy cured at 120&#xa0;°C (table, performance-composites.com, 2009); spread and loss factor from memory</source>
        <translation>Mechanische Eigenschaften von Kohlefaserverbunden, Faser und Epoxid bei 120&#xa0;°C gehärtet (Tabelle, performance-composites.com, 2009); Streuung und Verlustfaktor aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>Handbook of Finnish Plywood (Finnish Forest Industries Federation), plain birch plywood of 9 to 12&#xa0;mm, face grain along the arm, bent flat or on edge, from memory; loss factor from memory</source>
        <translation>Handbook of Finnish Plywood (Verband der finnischen Forstindustrie), Birkensperrholz von 9 bis 12&#xa0;mm, Decklage längs des Auslegers, flach oder hochkant gebogen, aus dem Gedächtnis; Verlustfaktor aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>The Aluminum Association, typical values of 6061-T6; loss factor common practice for an arm in its clamp, no source (of the metal alone 0.0001: L. Cremer &amp; M. Heckl, Structure-Borne Sound)</source>
        <translation>The Aluminum Association, typische Werte von 6061-T6; Verlustfaktor gängige Praxis für einen Ausleger in seiner Klemme, ohne Quelle (des Metalls allein 0,0001: L. Cremer und M. Heckl, Körperschall)</translation>
    </message>
    <message>
        <source>NEMA LI 1 grade G10, as laminate makers print it: specific gravity 1.82, flexural modulus lengthwise 2.7 million psi; shear modulus of glass cloth from the table of carbon fibre composite materials (performance-composites.com, 2009); spread and loss factor from memory</source>
        <translation>NEMA LI 1, Sorte G10, wie Hersteller sie angeben: Dichtezahl 1,82, Biegemodul längs 2,7 Millionen psi; Schubmodul von Glasgewebe aus der Tabelle der Kohlefaserverbunde (performance-composites.com, 2009); Streuung und Verlustfaktor aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>Own derivation for 10&#xa0;mm with faces of 0.6&#xa0;mm (1850&#xa0;kg/m³, 20&#xa0;GPa) on foam of 60&#xa0;kg/m³ that gives 20&#xa0;MPa in shear, bent flat: mean density, modulus of a solid board as stiff, shear modulus of the foam; properties of faces and foam, spread and loss factor from memory</source>
        <translation>Eigene Herleitung für 10&#xa0;mm mit Deckschichten von 0,6&#xa0;mm (1850&#xa0;kg/m³, 20&#xa0;GPa) auf Schaum von 60&#xa0;kg/m³, der bei Schub mit 20&#xa0;MPa nachgibt, flach gebogen: mittlere Dichte, Modul eines ebenso steifen vollen Bretts, Schubmodul des Schaums; Eigenschaften von Deckschichten und Schaum, Streuung und Verlustfaktor aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>Common practice, no source; readout of consumer cameras is 5 to 30&#xa0;ms</source>
        <translation>Gängige Praxis, ohne Quelle; Verbraucherkameras lesen in 5 bis 30&#xa0;ms aus</translation>
    </message>
    <message>
        <source>Common practice, no source; readout of consumer cameras is 5 to 30&#xa0;ms, the view is that of a lens two thirds as long as the sensor is wide</source>
        <translation>Gängige Praxis, ohne Quelle; Verbraucherkameras lesen in 5 bis 30&#xa0;ms aus, das Sichtfeld ist das eines Objektivs, dessen Brennweite zwei Drittel der Sensorbreite ist</translation>
    </message>
    <message>
        <source>Common practice, no source; all rows are read at once</source>
        <translation>Gängige Praxis, ohne Quelle; alle Zeilen werden zugleich gelesen</translation>
    </message>
    <message>
        <source>Common practice, no source; an uncooled sensor reads its rows through most of the frame and warms up over about 10&#xa0;ms, which stands for the exposure</source>
        <translation>Gängige Praxis, ohne Quelle; ein ungekühlter Sensor liest seine Zeilen fast das ganze Bild hindurch und erwärmt sich über etwa 10&#xa0;ms, die für die Belichtungszeit stehen</translation>
    </message>
    <message>
        <source>Common practice, no source</source>
        <translation>Gängige Praxis, ohne Quelle</translation>
    </message>
    <message>
        <source>This is no preset of a known kind with a name and values</source>
        <translation>Das ist keine Vorlage bekannter Art mit Namen und Werten</translation>
    </message>
    <message>
        <source>The file is no list of presets that this program reads</source>
        <translation>Die Datei ist keine Liste von Vorlagen, die dieses Programm liest</translation>
    </message>
    <message>
        <source>Two presets of a kind have the same name</source>
        <translation>Zwei Vorlagen einer Art haben denselben Namen</translation>
    </message>
    <message>
        <source>Common practice, no source: mass and size; pouches with 10 to 17&#xa0;mΩ over the capacity in Ah for each cell and 3&#xa0;mΩ for plug and wire; round cells of 21&#xa0;mm by 70&#xa0;mm, one or two side by side, with 70&#xa0;g, 4.5&#xa0;Ah and about 16&#xa0;mΩ each</source>
        <translation>Gängige Praxis, ohne Quelle: Masse und Größe; Beutelzellen mit 10 bis 17&#xa0;mΩ durch die Kapazität in Ah je Zelle und 3&#xa0;mΩ für Stecker und Kabel; Rundzellen von 21&#xa0;mm mal 70&#xa0;mm, eine oder zwei nebeneinander, mit je 70&#xa0;g, 4,5&#xa0;Ah und etwa 16&#xa0;mΩ</translation>
    </message>
    <message>
        <source>Sizes as sold, common practice, no source; density of silicone of this hardness from memory; dynamic ratio, loss factor and stretch limit common practice, no source</source>
        <translation>Größen wie verkauft, gängige Praxis, ohne Quelle; Dichte von Silikon dieser Härte aus dem Gedächtnis; dynamische Versteifung, Verlustfaktor und größte Dehnung gängige Praxis, ohne Quelle</translation>
    </message>
    <message>
        <source>The range of “%1” ends where it still gets more robust: widen it and find again.</source>
        <translation>Der Bereich von „%1“ endet, wo es noch robuster wird: erweitern und erneut suchen.</translation>
    </message>
    <message>
        <source>Each propeller balanced to half of its unbalance</source>
        <translation>Jeder Propeller auf die Hälfte seiner Unwucht ausgewuchtet</translation>
    </message>
    <message>
        <source>the craft has no such number</source>
        <translation>der Kopter hat keine solche Zahl</translation>
    </message>
    <message>
        <source>clean</source>
        <translation>sauber</translation>
    </message>
    <message>
        <source>faint</source>
        <translation>schwach</translation>
    </message>
    <message>
        <source>bad</source>
        <translation>stark</translation>
    </message>
    <message>
        <source>between %1 and %2&#xa0;px</source>
        <translation>zwischen %1 und %2&#xa0;px</translation>
    </message>
    <message>
        <source>above %1&#xa0;px</source>
        <translation>über %1&#xa0;px</translation>
    </message>
    <message>
        <source>up to %1&#xa0;px</source>
        <translation>bei höchstens %1&#xa0;px</translation>
    </message>
    <message>
        <source>Limits say how this camera and this eye grade a film. Where the curve itself may be off, measure first; new limits would hide it.</source>
        <translation>Die Grenzen sagen, wie diese Kamera und dieses Auge einen Film bewerten. Wo die Kurve selbst danebenliegen kann, zuerst messen; neue Grenzen würden das verdecken.</translation>
    </message>
    <message>
        <source>one flight note</source>
        <translation>eine Flugnotiz</translation>
    </message>
    <message>
        <source>%1 flight notes</source>
        <translation>%1 Flugnotizen</translation>
    </message>
    <message>
        <source>limit from which wobble is faint</source>
        <translation>Grenze, ab der das Wackeln schwach ist</translation>
    </message>
    <message>
        <source>limit from which wobble is bad</source>
        <translation>Grenze, ab der das Wackeln stark ist</translation>
    </message>
    <message>
        <source>what an eye saw, not a measurement</source>
        <translation>was ein Auge sah, keine Messung</translation>
    </message>
    <message>
        <source>Seen %1 from %2&#xa0;% to %3&#xa0;%, as computed: %4&#xa0;px.</source>
        <translation>Von %2&#xa0;% bis %3&#xa0;% %1 gesehen, wie berechnet: %4&#xa0;px.</translation>
    </message>
    <message>
        <source>Seen %1 from %2&#xa0;% to %3&#xa0;%, computed %4&#xa0;px there: %5.</source>
        <translation>Von %2&#xa0;% bis %3&#xa0;% %1 gesehen, berechnet sind dort %4&#xa0;px: %5.</translation>
    </message>
    <message>
        <source>There are no flight notes within the curve.</source>
        <translation>Im Bereich der Kurve gibt es keine Flugnotizen.</translation>
    </message>
    <message>
        <source>The flight notes agree with the curve.</source>
        <translation>Die Flugnotizen stimmen mit der Kurve überein.</translation>
    </message>
    <message>
        <source>No limits agree with the flight notes: what was seen clean is computed as strong as what was seen worse. The craft&apos;s numbers, or a note, are off.</source>
        <translation>Keine Grenzen passen zu den Flugnotizen: Für das, was sauber aussah, ist ebenso starkes Wackeln berechnet wie für das, was schlechter aussah. Zahlen des Kopters oder eine Notiz stimmen nicht.</translation>
    </message>
    <message>
        <source>For the flight notes to agree, faint would have to begin %1, and bad %2.</source>
        <translation>Damit die Flugnotizen stimmen, müsste „schwach“ %1 beginnen und „stark“ %2.</translation>
    </message>
    <message>
        <source>For the flight notes to agree, faint would have to begin %1.</source>
        <translation>Damit die Flugnotizen stimmen, müsste „schwach“ %1 beginnen.</translation>
    </message>
    <message>
        <source>For the flight notes to agree, bad would have to begin %1.</source>
        <translation>Damit die Flugnotizen stimmen, müsste „stark“ %1 beginnen.</translation>
    </message>
    <message>
        <source>no mass was hung: one to five are needed</source>
        <translation>keine Masse angehängt: Eine bis fünf sind nötig</translation>
    </message>
    <message>
        <source>%1 masses are too many: at most five</source>
        <translation>%1 Massen sind zu viele: höchstens fünf</translation>
    </message>
    <message>
        <source>mass %1 is %2&#xa0;g: it must be above 0</source>
        <translation>Masse %1 ist %2&#xa0;g: Sie muss über 0 liegen</translation>
    </message>
    <message>
        <source>mass %1 has no free length: the marks without it are %2&#xa0;mm apart</source>
        <translation>Masse %1 hat keine freie Länge: Ohne sie liegen die Striche %2&#xa0;mm auseinander</translation>
    </message>
    <message>
        <source>mass %1 does not stretch the tube: %2&#xa0;mm with it, %3&#xa0;mm without</source>
        <translation>Masse %1 dehnt den Schlauch nicht: %2&#xa0;mm mit ihr, %3&#xa0;mm ohne</translation>
    </message>
    <message>
        <source>%1&#xa0;MPa at stretch %2</source>
        <translation>%1&#xa0;MPa bei Dehnung %2</translation>
    </message>
    <message>
        <source>The rubber softens as it is stretched: %1, %2. The value is the one at the stretch of the craft&apos;s tubes.</source>
        <translation>Der Gummi wird weicher, je mehr er gedehnt wird: %1, %2. Der Wert gilt bei der Dehnung der Schläuche am Kopter.</translation>
    </message>
    <message>
        <source>The rubber stiffens as it is stretched: %1, %2. The value is the one at the stretch of the craft&apos;s tubes; look whether a length was misread.</source>
        <translation>Der Gummi wird steifer, je mehr er gedehnt wird: %1, %2. Der Wert gilt bei der Dehnung der Schläuche am Kopter; prüfen, ob eine Länge falsch abgelesen wurde.</translation>
    </message>
    <message>
        <source>The masses disagree by more than the lengths were misread alone: measure each once more.</source>
        <translation>Die Massen widersprechen sich stärker, als Ablesefehler allein erklären: jede noch einmal messen.</translation>
    </message>
    <message>
        <source>The ruler leaves %1 of the modulus open: draw the marks further apart or hang a larger mass.</source>
        <translation>Das Lineal lässt %1 des Moduls offen: die Striche weiter auseinander zeichnen oder eine größere Masse anhängen.</translation>
    </message>
    <message>
        <source>One mass does not tell whether the rubber softens as it is stretched: hang a second one.</source>
        <translation>Eine Masse verrät nicht, ob der Gummi beim Dehnen weicher wird: eine zweite anhängen.</translation>
    </message>
    <message>
        <source>The craft stretches its tubes to %1, the masses to %2 … %3: choose masses nearer to it.</source>
        <translation>Am Kopter sind die Schläuche auf %1 gedehnt, mit den Massen auf %2 … %3: Massen wählen, die näher daran liegen.</translation>
    </message>
    <message>
        <source>Rubber of %1 Shore A should have about %2&#xa0;MPa: check masses, lengths, diameters and hardness.</source>
        <translation>Gummi mit %1&#xa0;Shore&#xa0;A sollte etwa %2&#xa0;MPa haben: Massen, Längen, Durchmesser und Härte prüfen.</translation>
    </message>
    <message>
        <source>the ruler leaves %1 of the modulus open</source>
        <translation>das Lineal lässt %1 des Moduls offen</translation>
    </message>
    <message>
        <source>the modulus is far from that of this hardness</source>
        <translation>der Modul liegt weit von dem dieser Härte</translation>
    </message>
    <message>
        <source>the masses disagree</source>
        <translation>die Massen widersprechen sich</translation>
    </message>
    <message>
        <source>the modulus runs with the stretch</source>
        <translation>der Modul ändert sich mit der Dehnung</translation>
    </message>
    <message>
        <source>one mass alone</source>
        <translation>nur eine Masse</translation>
    </message>
    <message>
        <source>the masses agree to %1</source>
        <translation>die Massen stimmen auf %1 überein</translation>
    </message>
    <message>
        <source>hang test, one mass</source>
        <translation>Hängeversuch, eine Masse</translation>
    </message>
    <message>
        <source>hang test, %1 masses</source>
        <translation>Hängeversuch, %1 Massen</translation>
    </message>
    <message>
        <source>%1 modes were measured and %2 are matched</source>
        <translation>%1 Eigenschwingungen wurden gemessen und %2 zugeordnet</translation>
    </message>
    <message>
        <source>mode %1 of the bay is no mode or is matched twice</source>
        <translation>Eigenschwingung %1 der Gondel gibt es nicht, oder sie ist zweimal zugeordnet</translation>
    </message>
    <message>
        <source>push it forward and let go</source>
        <translation>nach vorn drücken und loslassen</translation>
    </message>
    <message>
        <source>push it sideways and let go</source>
        <translation>zur Seite drücken und loslassen</translation>
    </message>
    <message>
        <source>push it down and let go</source>
        <translation>nach unten drücken und loslassen</translation>
    </message>
    <message>
        <source>press one side down and let go</source>
        <translation>eine Seite nach unten drücken und loslassen</translation>
    </message>
    <message>
        <source>press its front down and let go</source>
        <translation>vorn nach unten drücken und loslassen</translation>
    </message>
    <message>
        <source>turn it flat, as a compass needle, and let go</source>
        <translation>waagerecht drehen, wie eine Kompassnadel, und loslassen</translation>
    </message>
    <message>
        <source>dynamic ratios of %1 and %2 explain the record alike: pluck the bay in other ways too, and say how the sensor&apos;s axes lie</source>
        <translation>dynamische Versteifungen von %1 und %2 erklären die Aufzeichnung gleich gut: die Gondel auch anders anzupfen und angeben, wie die Achsen des Sensors liegen</translation>
    </message>
    <message>
        <source>most of what rings is none of the bay&apos;s modes</source>
        <translation>das meiste, was schwingt, gehört zu keiner Eigenschwingung der Gondel</translation>
    </message>
    <message>
        <source>one mode alone rang, and one fits many crafts: pluck it in other ways too</source>
        <translation>nur eine Eigenschwingung hat geschwungen, und eine passt zu vielen Koptern: auch anders anzupfen</translation>
    </message>
    <message>
        <source>the sensor&apos;s axes do not lie as stated</source>
        <translation>die Achsen des Sensors liegen nicht wie angegeben</translation>
    </message>
    <message>
        <source>a mode of the bay does not swing</source>
        <translation>eine Eigenschwingung der Gondel schwingt nicht</translation>
    </message>
    <message>
        <source>pluck test, one pluck</source>
        <translation>Zupfversuch, einmal angezupft</translation>
    </message>
    <message>
        <source>pluck test, %1 plucks</source>
        <translation>Zupfversuch, %1-mal angezupft</translation>
    </message>
    <message>
        <source>A pluck cannot tell a stiff tube from a high dynamic ratio, and the tube&apos;s modulus is not measured: do the hang test first.</source>
        <translation>Zupfen unterscheidet einen steifen Schlauch nicht von einer hohen dynamischen Versteifung, und der Modul des Schlauchs ist nicht gemessen: zuerst den Hängeversuch machen.</translation>
    </message>
    <message>
        <source>What the sensor shows does not fit its stated axes or its place: directions were left out.</source>
        <translation>Was der Sensor zeigt, passt nicht zu seinen angegebenen Achsen oder seinem Ort: Richtungen wurden weggelassen.</translation>
    </message>
    <message>
        <source>%1 of six modes have hardly rung. Pluck again: %2.</source>
        <translation>%1 von sechs Eigenschwingungen haben kaum geschwungen. Noch einmal anzupfen: %2.</translation>
    </message>
    <message>
        <source>a sensor needs a place and an axis</source>
        <translation>ein Sensor braucht einen Ort und eine Achse</translation>
    </message>
    <message>
        <source>no throttle is given</source>
        <translation>kein Gas ist angegeben</translation>
    </message>
    <message>
        <source>throttle %1 is not within 0 to 1</source>
        <translation>Gas %1 liegt nicht zwischen 0 und 1</translation>
    </message>
    <message>
        <source>the step of frequency must be above 0&#xa0;Hz</source>
        <translation>der Schritt der Frequenz muss über 0&#xa0;Hz liegen</translation>
    </message>
    <message>
        <source>at these throttles no motor moves the sensors</source>
        <translation>bei diesen Gasstellungen bewegt kein Motor die Sensoren</translation>
    </message>
    <message>
        <source>A throttle is %1, must be above 0 and up to 1</source>
        <translation>Ein Gaswert ist %1, muss aber über 0 und höchstens bei 1 liegen</translation>
    </message>
    <message>
        <source>A speed is %1&#xa0;rpm, must be above 0</source>
        <translation>Eine Drehzahl ist %1&#xa0;U/min, muss aber über 0 liegen</translation>
    </message>
    <message>
        <source>Some readings have a voltage and others none; all must have the same</source>
        <translation>Manche Ablesungen haben eine Spannung, andere keine; alle müssen dasselbe haben</translation>
    </message>
    <message>
        <source>A voltage is %1&#xa0;V, must be above 0</source>
        <translation>Eine Spannung ist %1&#xa0;V, muss aber über 0 liegen</translation>
    </message>
    <message>
        <source>speeds at %1 throttles</source>
        <translation>Drehzahlen bei %1 Gasstellungen</translation>
    </message>
    <message>
        <source>Without a voltage the pack is taken to have been full; measure just after charging, or note the voltage of each reading.</source>
        <translation>Ohne Spannung gilt der Akku als voll; gleich nach dem Laden messen oder zu jeder Ablesung die Spannung notieren.</translation>
    </message>
    <message>
        <source>These speeds do not tell the motors&apos; resistance: it stays as it is. Readings from a fifth to full throttle would.</source>
        <translation>Aus diesen Drehzahlen ergibt sich der Widerstand der Motoren nicht: Er bleibt, wie er ist. Mit Ablesungen von einem Fünftel Gas bis Vollgas ginge es.</translation>
    </message>
    <message>
        <source>These speeds do not tell KV better than the label does: it stays as it is.</source>
        <translation>Aus diesen Drehzahlen ergibt sich KV nicht genauer als vom Aufdruck: Es bleibt, wie es ist.</translation>
    </message>
    <message>
        <source>Speeds tell the product of resistance and power coefficient: the resistance holds with the power coefficient the craft has now.</source>
        <translation>Aus Drehzahlen ergibt sich nur das Produkt aus Widerstand und Leistungsbeiwert: Der Widerstand gilt mit dem Leistungsbeiwert, den der Kopter jetzt hat.</translation>
    </message>
    <message>
        <source>No reading is at full throttle, where duty and throttle agree: the curve is as uncertain as KV. One more reading there would settle it.</source>
        <translation>Keine Ablesung ist bei Vollgas, wo Tastgrad und Gas übereinstimmen: Die Kurve ist so unsicher wie KV. Noch eine Ablesung dort würde das klären.</translation>
    </message>
    <message>
        <source>The curve replaces the one the craft has.</source>
        <translation>Die Kurve ersetzt die, die der Kopter hat.</translation>
    </message>
    <message>
        <source>There are readings at %1 throttles, at least 3 are needed</source>
        <translation>Es gibt Ablesungen bei %1 Gasstellungen, mindestens 3 sind nötig</translation>
    </message>
    <message>
        <source>No arm was tapped: one frequency is needed at least</source>
        <translation>Kein Ausleger wurde angeklopft: Mindestens eine Frequenz ist nötig</translation>
    </message>
    <message>
        <source>There is no arm %1, the craft has %2</source>
        <translation>Einen Ausleger %1 gibt es nicht, der Kopter hat %2</translation>
    </message>
    <message>
        <source>A frequency is %1&#xa0;Hz, must be above 0</source>
        <translation>Eine Frequenz ist %1&#xa0;Hz, muss aber über 0 liegen</translation>
    </message>
    <message>
        <source>A loss factor is %1, must be above 0 and below 1</source>
        <translation>Ein Verlustfaktor ist %1, muss aber über 0 und unter 1 liegen</translation>
    </message>
    <message>
        <source>tap test, one direction</source>
        <translation>Klopfversuch, eine Richtung</translation>
    </message>
    <message>
        <source>tap test, %1 directions</source>
        <translation>Klopfversuch, %1 Richtungen</translation>
    </message>
    <message>
        <source>These frequencies do not tell the arms&apos; modulus and the joint at the root apart: the joint stays as it is, and the modulus takes in what it gives.</source>
        <translation>Diese Frequenzen trennen den Modul der Ausleger nicht von der Verbindung am Fuß: Die Verbindung bleibt, wie sie ist, und der Modul nimmt ihr Nachgeben in sich auf.</translation>
    </message>
    <message>
        <source>The joint at the root gives nothing that could be measured.</source>
        <translation>Die Verbindung am Fuß gibt nicht messbar nach.</translation>
    </message>
    <message>
        <source>A free craft rings in several modes close together; hold it by its middle to be sure of the arm&apos;s own.</source>
        <translation>Ein freier Kopter schwingt in mehreren dicht benachbarten Eigenschwingungen; in der Mitte festhalten, um sicher die des Auslegers zu haben.</translation>
    </message>
    <message>
        <source>No Young&apos;s modulus gives the arms these frequencies</source>
        <translation>Kein Elastizitätsmodul gibt den Auslegern diese Frequenzen</translation>
    </message>
    <message>
        <source>no modulus and joint give all of these frequencies</source>
        <translation>kein Modul und keine Verbindung ergeben alle diese Frequenzen</translation>
    </message>
    <message>
        <source>modulus and joint are not told apart</source>
        <translation>Modul und Verbindung lassen sich nicht trennen</translation>
    </message>
    <message>
        <source>the craft was free</source>
        <translation>der Kopter war frei</translation>
    </message>
    <message>
        <source>both directions agree with one modulus and one joint</source>
        <translation>beide Richtungen passen zu einem Modul und einer Verbindung</translation>
    </message>
    <message>
        <source>No level was measured: at least one axis at one throttle is needed</source>
        <translation>Kein Pegel wurde gemessen: Mindestens eine Achse bei einer Gasstellung ist nötig</translation>
    </message>
    <message>
        <source>A throttle is %1, must be from 0 to 1</source>
        <translation>Ein Gaswert ist %1, muss aber zwischen 0 und 1 liegen</translation>
    </message>
    <message>
        <source>There is no motor %1, the craft has %2</source>
        <translation>Einen Motor %1 gibt es nicht, der Kopter hat %2</translation>
    </message>
    <message>
        <source>A reading has %1 amplitudes for %2 axes</source>
        <translation>Eine Ablesung hat %1 Amplituden für %2 Achsen</translation>
    </message>
    <message>
        <source>Some readings are of one motor and others of all; all must be alike</source>
        <translation>Manche Ablesungen sind von einem Motor, andere von allen; alle müssen gleichartig sein</translation>
    </message>
    <message>
        <source>These readings do not tell the motors apart: the value is what all have in common. Motors that turn at speeds of their own, or as many axes as motors, would.</source>
        <translation>Diese Ablesungen trennen die Motoren nicht: Der Wert ist, was allen gemeinsam ist. Dazu braucht es Motoren mit eigenen Drehzahlen oder so viele Achsen wie Motoren.</translation>
    </message>
    <message>
        <source>At one moment the motors may just add or cancel: readings at more throttles, or over a longer time, narrow the value.</source>
        <translation>In einem Augenblick können sich die Motoren gerade verstärken oder aufheben: Ablesungen bei mehr Gasstellungen oder über längere Zeit engen den Wert ein.</translation>
    </message>
    <message>
        <source>airframe level at one throttle</source>
        <translation>Pegel am Rahmen bei einer Gasstellung</translation>
    </message>
    <message>
        <source>airframe level at %1 throttles</source>
        <translation>Pegel am Rahmen bei %1 Gasstellungen</translation>
    </message>
    <message>
        <source>unbalance of motor %1</source>
        <translation>Unwucht von Motor %1</translation>
    </message>
    <message>
        <source>At %1&#xa0;% throttle the rotors stand still</source>
        <translation>Bei %1&#xa0;% Gas stehen die Rotoren still</translation>
    </message>
    <message>
        <source>A reading shows no motion</source>
        <translation>Eine Ablesung zeigt keine Bewegung</translation>
    </message>
    <message>
        <source>each line is one motor&apos;s</source>
        <translation>jede Ablesung gehört zu einem Motor</translation>
    </message>
    <message>
        <source>the axes tell the motors apart, condition number %1</source>
        <translation>die Achsen trennen die Motoren, Konditionszahl %1</translation>
    </message>
    <message>
        <source>the motors are not told apart</source>
        <translation>die Motoren lassen sich nicht trennen</translation>
    </message>
    <message>
        <source>Nothing stands above the noise</source>
        <translation>Nichts hebt sich vom Rauschen ab</translation>
    </message>
    <message>
        <source>the recordings are too short to be laid over each other</source>
        <translation>die Aufzeichnungen sind zu kurz, um übereinandergelegt zu werden</translation>
    </message>
    <message>
        <source>the two recordings share no motion by which they could be laid over each other</source>
        <translation>die beiden Aufzeichnungen haben keine Bewegung gemeinsam, nach der sie übereinandergelegt werden könnten</translation>
    </message>
    <message>
        <source>the two recordings overlap by less than %1&#xa0;s</source>
        <translation>die beiden Aufzeichnungen überlappen sich um weniger als %1&#xa0;s</translation>
    </message>
    <message>
        <source>two recordings were laid on one clock: the second begins %1&#xa0;s after the first and its clock differs by %2&#xa0;ppm</source>
        <translation>zwei Aufzeichnungen wurden auf eine gemeinsame Uhr gelegt: Die zweite beginnt %1&#xa0;s nach der ersten, und ihre Uhr weicht um %2&#xa0;ppm ab</translation>
    </message>
    <message>
        <source>a block of %1 turns is too short: at least %2</source>
        <translation>ein Block von %1 Umdrehungen ist zu kurz: mindestens %2</translation>
    </message>
    <message>
        <source>the speed must be known at two times at least</source>
        <translation>die Drehzahl muss zu mindestens zwei Zeitpunkten bekannt sein</translation>
    </message>
    <message>
        <source>the speed must be finite, not below 0, at times that rise</source>
        <translation>die Drehzahl muss endlich und nicht unter 0 sein, und die Zeiten müssen steigen</translation>
    </message>
    <message>
        <source>order %1 must be above 0 and at most %2</source>
        <translation>Ordnung %1 muss über 0 und höchstens %2 sein</translation>
    </message>
    <message>
        <source>order %1 reaches %2&#xa0;Hz, above half the rate of %3&#xa0;Hz</source>
        <translation>Ordnung %1 reicht bis %2&#xa0;Hz, mehr als die Hälfte der Abtastrate von %3&#xa0;Hz</translation>
    </message>
    <message>
        <source>nothing turns for %1 turns on end</source>
        <translation>nichts dreht sich über %1 Umdrehungen am Stück</translation>
    </message>
    <message>
        <source>the rate would be %1 samples a second, not %2 to %3: is the time in another unit?</source>
        <translation>die Abtastrate wäre %1 Werte in der Sekunde, nicht %2 bis %3: Steht die Zeit in einer anderen Einheit?</translation>
    </message>
    <message>
        <source>the sample rate is not above 0</source>
        <translation>die Abtastrate liegt nicht über 0</translation>
    </message>
    <message>
        <source>%1 holds no number</source>
        <translation>%1 enthält keine Zahl</translation>
    </message>
    <message>
        <source>the time column does not go forward</source>
        <translation>die Zeitspalte läuft nicht vorwärts</translation>
    </message>
    <message>
        <source>no column holds the time: the sample rate has to be stated</source>
        <translation>keine Spalte enthält die Zeit: Die Abtastrate muss angegeben werden</translation>
    </message>
    <message>
        <source>the file is not what it was when it was looked at</source>
        <translation>die Datei hat sich geändert, seit sie angesehen wurde</translation>
    </message>
    <message>
        <source>the recording does not fit into memory: use fewer of its columns</source>
        <translation>die Aufzeichnung passt nicht in den Speicher: weniger ihrer Spalten benutzen</translation>
    </message>
    <message>
        <source>the file is empty</source>
        <translation>die Datei ist leer</translation>
    </message>
    <message>
        <source>more than 4 GiB came in: name the file instead</source>
        <translation>es kamen mehr als 4&#xa0;GiB an: stattdessen die Datei nennen</translation>
    </message>
    <message>
        <source>the recording breaks off while it is read</source>
        <translation>die Aufzeichnung bricht beim Lesen ab</translation>
    </message>
    <message>
        <source>the mode at %1&#xa0;Hz is known only to %2&#xa0;% in frequency and %3&#xa0;% in loss</source>
        <translation>die Eigenschwingung bei %1&#xa0;Hz ist nur auf %2&#xa0;% in der Frequenz und %3&#xa0;% im Verlustfaktor bekannt</translation>
    </message>
    <message>
        <source>the mode at %1&#xa0;Hz softens: %2&#xa0;% lower while it is large</source>
        <translation>die Eigenschwingung bei %1&#xa0;Hz wird weicher: um %2&#xa0;% tiefer, solange sie stark schwingt</translation>
    </message>
    <message>
        <source>the mode at %1&#xa0;Hz stiffens: %2&#xa0;% higher while it is large</source>
        <translation>die Eigenschwingung bei %1&#xa0;Hz wird steifer: um %2&#xa0;% höher, solange sie stark schwingt</translation>
    </message>
    <message>
        <source>the modes at %1&#xa0;Hz and %2&#xa0;Hz move alike: more columns, or a pluck in another direction, tell them apart</source>
        <translation>die Eigenschwingungen bei %1&#xa0;Hz und %2&#xa0;Hz bewegen sich gleich: Mehr Spalten oder Zupfen in anderer Richtung trennen sie</translation>
    </message>
    <message>
        <source>nothing rings down: no pluck stands out of the noise and dies away</source>
        <translation>nichts klingt ab: Kein Zupfen hebt sich vom Rauschen ab und verklingt</translation>
    </message>
    <message>
        <source>nothing rings down: the samples hold no decay</source>
        <translation>nichts klingt ab: Die Werte enthalten kein Abklingen</translation>
    </message>
    <message>
        <source>nothing rings down: the decays are too short</source>
        <translation>nichts klingt ab: Das Abklingen ist zu kurz</translation>
    </message>
    <message>
        <source>nothing rings down: what moves is noise, or goes on without dying</source>
        <translation>nichts klingt ab: Was sich bewegt, ist Rauschen oder verklingt nicht</translation>
    </message>
    <message>
        <source>a propeller has at least one blade</source>
        <translation>ein Propeller hat mindestens ein Blatt</translation>
    </message>
    <message>
        <source>the range of speeds must rise from above 0</source>
        <translation>der Bereich der Drehzahlen muss über 0 beginnen und steigen</translation>
    </message>
    <message>
        <source>a window of %1&#xa0;s holds less than %2 turns at the lowest speed</source>
        <translation>ein Fenster von %1&#xa0;s enthält bei der niedrigsten Drehzahl weniger als %2 Umdrehungen</translation>
    </message>
    <message>
        <source>a rate of %1&#xa0;Hz is too low to hear the blade pass up to %2 turns a second: at least %3&#xa0;Hz are needed</source>
        <translation>eine Abtastrate von %1&#xa0;Hz ist zu niedrig, um den Blattdurchgang bis %2 Umdrehungen je Sekunde zu hören: Mindestens %3&#xa0;Hz sind nötig</translation>
    </message>
    <message>
        <source>no rotor is heard in this record</source>
        <translation>in dieser Aufzeichnung ist kein Rotor zu hören</translation>
    </message>
    <message>
        <source>a segment of %1 samples is too short: at least %2</source>
        <translation>ein Abschnitt von %1 Werten ist zu kurz: mindestens %2</translation>
    </message>
    <message>
        <source>holds no samples</source>
        <translation>enthält keine Werte</translation>
    </message>
    <message>
        <source>holds %1 samples, which is too few: at least %2 are needed</source>
        <translation>enthält %1 Werte, das sind zu wenige: Mindestens %2 sind nötig</translation>
    </message>
    <message>
        <source>sample %1 is not a finite number</source>
        <translation>Wert %1 ist keine endliche Zahl</translation>
    </message>
    <message>
        <source>sample %1 is beyond ±%2</source>
        <translation>Wert %1 liegt außerhalb von ±%2</translation>
    </message>
    <message>
        <source>all samples are the same</source>
        <translation>alle Werte sind gleich</translation>
    </message>
    <message>
        <source>the sample rate must be above 0&#xa0;Hz</source>
        <translation>die Abtastrate muss über 0&#xa0;Hz liegen</translation>
    </message>
    <message>
        <source>the sound is damaged: its header cannot be read</source>
        <translation>der Ton ist beschädigt: Sein Dateikopf lässt sich nicht lesen</translation>
    </message>
    <message>
        <source>the sound has %1 channels, more than %2</source>
        <translation>der Ton hat %1 Kanäle, mehr als %2</translation>
    </message>
    <message>
        <source>the sound has more than %1 samples: cut out what matters</source>
        <translation>der Ton hat mehr als %1 Werte: herausschneiden, worauf es ankommt</translation>
    </message>
    <message>
        <source>the file ends after sample %1; its header promises %2</source>
        <translation>die Datei endet nach Wert %1; ihr Dateikopf nennt %2</translation>
    </message>
    <message>
        <source>the file ends within the sound, after sample %1</source>
        <translation>die Datei endet mitten im Ton, nach Wert %1</translation>
    </message>
    <message>
        <source>%1 holds no number at sample %2 (samples like it: %3)</source>
        <translation>%1 enthält bei Wert %2 keine Zahl (solche Werte: %3)</translation>
    </message>
    <message>
        <source>the sound has %1 channels, not %2</source>
        <translation>der Ton hat %1 Kanäle, nicht %2</translation>
    </message>
    <message>
        <source>no column of the recording is in use</source>
        <translation>keine Spalte der Aufzeichnung wird benutzt</translation>
    </message>
    <message>
        <source>the sound holds no samples</source>
        <translation>der Ton enthält keine Werte</translation>
    </message>
    <message>
        <source>this RIFF file holds no sound: save it as WAV</source>
        <translation>diese RIFF-Datei enthält keinen Ton: als WAV speichern</translation>
    </message>
    <message>
        <source>%1 is not read here: convert the sound to WAV or FLAC</source>
        <translation>%1 wird hier nicht gelesen: den Ton in WAV oder FLAC umwandeln</translation>
    </message>
    <message>
        <source>this is an archive or a spreadsheet: save the recording as CSV</source>
        <translation>das ist ein Archiv oder eine Kalkulationstabelle: die Aufzeichnung als CSV speichern</translation>
    </message>
    <message>
        <source>the text is in UTF-16: save the recording as CSV in UTF-8</source>
        <translation>der Text ist in UTF-16: die Aufzeichnung als CSV in UTF-8 speichern</translation>
    </message>
    <message>
        <source>%1 is taken for the time: it rises evenly</source>
        <translation>%1 gilt als Zeit: Die Werte steigen gleichmäßig</translation>
    </message>
    <message>
        <source>No column holds the time: the sample rate has to be stated</source>
        <translation>Keine Spalte enthält die Zeit: Die Abtastrate muss angegeben werden</translation>
    </message>
    <message>
        <source>%1 is taken to be in %2: that makes %3 samples a second</source>
        <translation>%1: als Einheit gilt %2, das ergibt %3 Werte in der Sekunde</translation>
    </message>
    <message>
        <source>%1 is taken to be in %2</source>
        <translation>%1: als Einheit gilt %2</translation>
    </message>
    <message>
        <source>line %1 ends too early (lines like it: %2)</source>
        <translation>Zeile %1 endet zu früh (solche Zeilen: %2)</translation>
    </message>
    <message>
        <source>line %1 holds no numbers and is left out (lines like it: %2)</source>
        <translation>Zeile %1 enthält keine Zahlen und bleibt weg (solche Zeilen: %2)</translation>
    </message>
    <message>
        <source>the file ends within line %1, which is left out</source>
        <translation>die Datei endet mitten in Zeile %1, die wegbleibt</translation>
    </message>
    <message>
        <source>%1 holds no number in line %2: “%3” (lines like it: %4)</source>
        <translation>%1 enthält in Zeile %2 keine Zahl: „%3“ (solche Zeilen: %4)</translation>
    </message>
    <message>
        <source>%1 is empty in line %2 (lines like it: %3)</source>
        <translation>%1 ist in Zeile %2 leer (solche Zeilen: %3)</translation>
    </message>
    <message>
        <source>line %1 has no end</source>
        <translation>Zeile %1 hat kein Ende</translation>
    </message>
    <message>
        <source>the recording has no row of numbers</source>
        <translation>die Aufzeichnung hat keine Zeile mit Zahlen</translation>
    </message>
    <message>
        <source>the recording has one row only</source>
        <translation>die Aufzeichnung hat nur eine Zeile</translation>
    </message>
    <message>
        <source>before line %1 %2 s are missing (gaps: %3)</source>
        <translation>vor Zeile %1 fehlen %2&#xa0;s (Lücken: %3)</translation>
    </message>
    <message>
        <source>line %1 has the time of the line before and is left out (lines like it: %2)</source>
        <translation>Zeile %1 hat die Zeit der Zeile davor und bleibt weg (solche Zeilen: %2)</translation>
    </message>
    <message>
        <source>line %1 goes back in time and is left out (lines like it: %2)</source>
        <translation>Zeile %1 geht in der Zeit zurück und bleibt weg (solche Zeilen: %2)</translation>
    </message>
    <message>
        <source>in line %1 the clock begins anew: what follows is joined on (places: %2)</source>
        <translation>in Zeile %1 beginnt die Uhr von vorn: Das Folgende ist angehängt (Stellen: %2)</translation>
    </message>
    <message>
        <source>from line %1 on there are %2 samples a second instead of %3</source>
        <translation>ab Zeile %1 sind es %2 statt %3 Werte in der Sekunde</translation>
    </message>
    <message>
        <source>the steps of the time are uneven, %1 ms to %2 ms: resampled to %3 samples a second</source>
        <translation>die Zeitschritte sind ungleich, %1&#xa0;ms bis %2&#xa0;ms: umgerechnet auf %3 Werte in der Sekunde</translation>
    </message>
    <message>
        <source>before line %1 %2 s are missing, longer than the recording itself: read the parts one by one</source>
        <translation>vor Zeile %1 fehlen %2&#xa0;s, mehr als die Aufzeichnung selbst dauert: die Teile einzeln lesen</translation>
    </message>
    <message>
        <source>the input holds %1 samples, the output %2</source>
        <translation>der Eingang enthält %1 Werte, der Ausgang %2</translation>
    </message>
    <message>
        <source>%1 stands still from line or sample %2 on, as if samples were lost (values like it: %3)</source>
        <translation>%1 steht ab Zeile oder Wert %2 still, als wären Werte verloren (solche Werte: %3)</translation>
    </message>
    <message>
        <source>the header of the sound is damaged</source>
        <translation>der Dateikopf des Tons ist beschädigt</translation>
    </message>
    <message>
        <source>the sound is packed in a way that is not read here: save it as WAV with plain samples, or as FLAC</source>
        <translation>der Ton ist auf eine Weise gepackt, die hier nicht gelesen wird: als WAV mit einfachen Werten oder als FLAC speichern</translation>
    </message>
    <message>
        <source>Own unbalance</source>
        <translation>Eigene Unwucht</translation>
    </message>
    <message>
        <source>Residual unbalance of this arm&apos;s motor with its propeller; empty where it is as the others&apos;.</source>
        <translation>Restunwucht des Motors dieses Auslegers mit seinem Propeller; leer, wenn sie wie bei den anderen ist.</translation>
    </message>
    <message>
        <source>From throttle</source>
        <translation>Gas von</translation>
    </message>
    <message>
        <source>The lowest throttle at which it was seen: 0.4 is 40 %.</source>
        <translation>Das niedrigste Gas, bei dem es zu sehen war: 0,4 sind 40&#xa0;%.</translation>
    </message>
    <message>
        <source>To throttle</source>
        <translation>Gas bis</translation>
    </message>
    <message>
        <source>The highest throttle at which it was seen: 0.47 is 47 %.</source>
        <translation>Das höchste Gas, bei dem es zu sehen war: 0,47 sind 47&#xa0;%.</translation>
    </message>
    <message>
        <source>Sample rate</source>
        <translation>Abtastrate</translation>
    </message>
    <message>
        <source>How many samples a second; empty for what the recording&apos;s own stamps say.</source>
        <translation>Wie viele Werte in der Sekunde; leer für das, was die Zeitstempel der Aufzeichnung sagen.</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>Where the part that is used begins, in seconds of the recording; empty for its beginning.</source>
        <translation>Wo der benutzte Teil beginnt, in Sekunden der Aufzeichnung; leer für ihren Anfang.</translation>
    </message>
    <message>
        <source>To</source>
        <translation>Bis</translation>
    </message>
    <message>
        <source>Where the part that is used ends, in seconds of the recording; empty for its end.</source>
        <translation>Wo der benutzte Teil endet, in Sekunden der Aufzeichnung; leer für ihr Ende.</translation>
    </message>
    <message>
        <source>Tapped arm</source>
        <translation>Angeklopfter Ausleger</translation>
    </message>
    <message>
        <source>Which arm was tapped, counted from 1; empty for the first.</source>
        <translation>Welcher Ausleger angeklopft wurde, von 1 an gezählt; leer für den ersten.</translation>
    </message>
    <message>
        <source>Place of the sensor</source>
        <translation>Ort des Sensors</translation>
    </message>
    <message>
        <source>Where the sensor sat, measured from the middle of the centre plate: forward, left, up; empty where that is not known.</source>
        <translation>Wo der Sensor saß, gemessen von der Mitte der Mittelplatte: vorn, links, oben; leer, wenn das nicht bekannt ist.</translation>
    </message>
    <message>
        <source>Mass of the sensor</source>
        <translation>Masse des Sensors</translation>
    </message>
    <message>
        <source>What the sensor weighs with what holds it, where it is no part of the craft.</source>
        <translation>Was der Sensor mit seiner Halterung wiegt, wenn er kein Teil des Kopters ist.</translation>
    </message>
    <message>
        <source>What was seen</source>
        <translation>Was zu sehen war</translation>
    </message>
    <message>
        <source>Kind of recording</source>
        <translation>Art der Aufzeichnung</translation>
    </message>
    <message>
        <source>Role of a column</source>
        <translation>Rolle einer Spalte</translation>
    </message>
    <message>
        <source>a list of %1 pairs</source>
        <translation>eine Liste von %1 Paaren</translation>
    </message>
    <message>
        <source>%1 is %2, allowed %3, %4 or %5</source>
        <translation>%1 ist %2, erlaubt sind %3, %4 oder %5</translation>
    </message>
    <message>
        <source>%1 is %2, allowed one of %3</source>
        <translation>%1 ist %2, erlaubt ist eines von %3</translation>
    </message>
    <message>
        <source>%1 is none of %2, %3 and %4</source>
        <translation>%1 ist weder %2 noch %3 oder %4</translation>
    </message>
    <message>
        <source>%1 is none of %2</source>
        <translation>%1 ist keines von %2</translation>
    </message>
    <message>
        <source>Duty</source>
        <translation>Tastgrad</translation>
    </message>
    <message>
        <source>A flight note runs from %1 to %2, the first must not be larger</source>
        <translation>Eine Flugnotiz reicht von %1 bis %2, die erste Zahl darf nicht größer sein</translation>
    </message>
    <message>
        <source>The throttle curve goes from %1, %2 to %3, %4; throttle and duty must both rise from pair to pair</source>
        <translation>Die Gaskurve geht von %1, %2 zu %3, %4; Gas und Tastgrad müssen beide von Paar zu Paar steigen</translation>
    </message>
    <message>
        <source>A recording names no file</source>
        <translation>Eine Aufzeichnung nennt keine Datei</translation>
    </message>
    <message>
        <source>The part of a recording runs from %1 to %2, the first must be the smaller</source>
        <translation>Der Teil einer Aufzeichnung reicht von %1 bis %2, die erste Zahl muss die kleinere sein</translation>
    </message>
    <message>
        <source>The text of a note</source>
        <translation>Der Text einer Notiz</translation>
    </message>
    <message>
        <source>The file of a recording</source>
        <translation>Die Datei einer Aufzeichnung</translation>
    </message>
    <message>
        <source>The unit of a column</source>
        <translation>Die Einheit einer Spalte</translation>
    </message>
    <message>
        <source>The directions of a sensor&apos;s axes</source>
        <translation>Die Richtungen der Achsen eines Sensors</translation>
    </message>
    <message>
        <source>The list of a recording&apos;s columns</source>
        <translation>Die Liste der Spalten einer Aufzeichnung</translation>
    </message>
    <message>
        <source>The list of recordings</source>
        <translation>Die Liste der Aufzeichnungen</translation>
    </message>
    <message>
        <source>The throttle curve</source>
        <translation>Die Gaskurve</translation>
    </message>
    <message>
        <source>The list of flight notes</source>
        <translation>Die Liste der Flugnotizen</translation>
    </message>
    <message>
        <source>the decays stand only %1 dB above the noise</source>
        <translation>das Abklingen liegt nur %1&#xa0;dB über dem Rauschen</translation>
    </message>
    <message>
        <source>one pluck, %1 dB above the noise</source>
        <translation>einmal angezupft, %1&#xa0;dB über dem Rauschen</translation>
    </message>
    <message>
        <source>%1 plucks, %2 dB above the noise</source>
        <translation>%1-mal angezupft, %2&#xa0;dB über dem Rauschen</translation>
    </message>
    <message>
        <source>one of the two recordings holds no acceleration</source>
        <translation>eine der beiden Aufzeichnungen enthält keine Beschleunigung</translation>
    </message>
    <message>
        <source>the chosen part holds fewer than %1 samples</source>
        <translation>der gewählte Teil enthält weniger als %1 Werte</translation>
    </message>
    <message>
        <source>the record does not determine the dynamic ratio and the loss factor</source>
        <translation>die Aufzeichnung bestimmt dynamische Versteifung und Verlustfaktor nicht</translation>
    </message>
    <message>
        <source>resistance of the motors</source>
        <translation>Widerstand der Motoren</translation>
    </message>
    <message>
        <source>resistance of the pack</source>
        <translation>Widerstand des Akkus</translation>
    </message>
    <message>
        <source>the speeds tell nothing that is not known better</source>
        <translation>die Drehzahlen sagen nichts, was nicht schon genauer bekannt ist</translation>
    </message>
    <message>
        <source>the readings scatter more than their spread explains</source>
        <translation>die Ablesungen weichen stärker ab, als ihre Streuung erklärt</translation>
    </message>
    <message>
        <source>KV is further from the craft&apos;s than a label is usually off: is it the motor, and the voltage, that the craft says?</source>
        <translation>KV liegt weiter von dem des Kopters ab, als ein Aufdruck gewöhnlich abweicht: Stimmen Motor und Spannung mit denen des Kopters überein?</translation>
    </message>
    <message>
        <source>no voltage was noted</source>
        <translation>keine Spannung wurde notiert</translation>
    </message>
    <message>
        <source>the corrected motor explains every reading within its spread</source>
        <translation>der korrigierte Motor erklärt jede Ablesung im Rahmen ihrer Streuung</translation>
    </message>
    <message>
        <source>No KV gives the speed that was measured at full throttle</source>
        <translation>Kein KV ergibt die Drehzahl, die bei Vollgas gemessen wurde</translation>
    </message>
    <message>
        <source>At %1 % throttle the rotors turn faster than the motors can at any duty: KV or the voltage is wrong; measure at full throttle too</source>
        <translation>Bei %1&#xa0;% Gas drehen die Rotoren schneller, als die Motoren bei irgendeinem Tastgrad können: KV oder die Spannung ist falsch; auch bei Vollgas messen</translation>
    </message>
    <message>
        <source>The speeds do not rise with the throttle from %1&#xa0;% to %2&#xa0;%</source>
        <translation>Die Drehzahlen steigen von %1&#xa0;% bis %2&#xa0;% nicht mit dem Gas</translation>
    </message>
    <message>
        <source>There are %1 throttles, a throttle curve takes %2</source>
        <translation>Es sind %1 Gasstellungen, eine Gaskurve fasst %2</translation>
    </message>
    <message>
        <source>no KV and resistance explain the speeds: the duty is not the throttle</source>
        <translation>kein KV und kein Widerstand erklären die Drehzahlen: Der Tastgrad ist nicht das Gas</translation>
    </message>
    <message>
        <source>the recording cannot be opened: %1</source>
        <translation>die Aufzeichnung lässt sich nicht öffnen: %1</translation>
    </message>
    <message>
        <source>the recording cannot be read: %1</source>
        <translation>die Aufzeichnung lässt sich nicht lesen: %1</translation>
    </message>
    <message>
        <source>this is a folder: name one file in it</source>
        <translation>das ist ein Ordner: eine Datei daraus nennen</translation>
    </message>
    <message>
        <source>this is no ordinary file: save the recording first</source>
        <translation>das ist keine gewöhnliche Datei: die Aufzeichnung erst speichern</translation>
    </message>
    <message>
        <source>the recording holds no samples</source>
        <translation>die Aufzeichnung enthält keine Werte</translation>
    </message>
    <message>
        <source>the recording has no sampling rate</source>
        <translation>die Aufzeichnung hat keine Abtastrate</translation>
    </message>
    <message>
        <source>the recording has %1 columns, not %2</source>
        <translation>die Aufzeichnung hat %1 Spalten, nicht %2</translation>
    </message>
    <message>
        <source>sample %1 of column %2 is no number</source>
        <translation>Wert %1 der Spalte %2 ist keine Zahl</translation>
    </message>
    <message>
        <source>the recording is too short: %1 samples, and at least %2 are needed</source>
        <translation>die Aufzeichnung ist zu kurz: %1 Werte, und mindestens %2 sind nötig</translation>
    </message>
    <message>
        <source>nothing moves: every sample has the same value</source>
        <translation>nichts bewegt sich: Alle Werte sind gleich</translation>
    </message>
    <message>
        <source>%1 is at the end of its range from line or sample %2 on (values like it: %3)</source>
        <translation>%1 ist ab Zeile oder Wert %2 am Ende des Messbereichs (solche Werte: %3)</translation>
    </message>
    <message>
        <source>At %1&#xa0;% throttle order %2 lies at %3&#xa0;Hz, above half the sample rate, %4&#xa0;Hz: a sensor without a filter of its own writes it at %5&#xa0;Hz</source>
        <translation>Bei %1&#xa0;% Gas liegt die Ordnung %2 bei %3&#xa0;Hz, über der halben Abtastrate, %4&#xa0;Hz: Ein Sensor ohne eigenen Filter schreibt sie bei %5&#xa0;Hz auf</translation>
    </message>
    <message>
        <source>%1 rpm</source>
        <translation>%1&#xa0;U/min</translation>
    </message>
    <message>
        <source>the rotors&apos; orders explain only %1 % of what the lines show</source>
        <translation>die Ordnungen der Rotoren erklären nur %1 % dessen, was die Linien zeigen</translation>
    </message>
    <message>
        <source>%1 would explain the lines nearly as well: name the throttle, or film at another one</source>
        <translation>%1 würden die Linien fast ebenso gut erklären: das Gas nennen oder bei einem anderen filmen</translation>
    </message>
    <message>
        <source>the rotors&apos; orders explain %1 % of what the lines show</source>
        <translation>die Ordnungen der Rotoren erklären %1 % dessen, was die Linien zeigen</translation>
    </message>
    <message>
        <source>a line counts only where one of its aliases is meant</source>
        <translation>eine Linie zählt nur, wenn eine ihrer Spiegelfrequenzen gemeint ist</translation>
    </message>
    <message>
        <source>at %1 % throttle no order of this craft&apos;s rotors lies at a line of the film</source>
        <translation>bei %1 % Gas liegt keine Ordnung der Rotoren dieses Kopters an einer Linie des Films</translation>
    </message>
    <message>
        <source>no speed of this craft&apos;s rotors explains a line of the film</source>
        <translation>keine Drehzahl der Rotoren dieses Kopters erklärt eine Linie des Films</translation>
    </message>
    <message>
        <source>the film shows no line above %1&#xa0;px</source>
        <translation>der Film zeigt keine Linie über %1&#xa0;px</translation>
    </message>
    <message>
        <source>Films at three throttles or more are needed</source>
        <translation>Filme bei mindestens drei Gasstellungen sind nötig</translation>
    </message>
    <message>
        <source>Order 1 (unbalance) shows at fewer than three speeds of the rotors</source>
        <translation>Ordnung 1 (Unwucht) zeigt sich bei weniger als drei Drehzahlen der Rotoren</translation>
    </message>
    <message>
        <source>films at %1 throttles</source>
        <translation>Filme bei %1 Gasstellungen</translation>
    </message>
    <message>
        <source>the films agree; motors are not told apart</source>
        <translation>die Filme stimmen überein; die Motoren werden nicht unterschieden</translation>
    </message>
    <message>
        <source>the films disagree: the craft&apos;s frequencies differ from the predicted ones. Do the pluck and tap tests first</source>
        <translation>die Filme widersprechen sich: Die Frequenzen des Kopters sind andere als die vorhergesagten. Zuerst Zupf- und Klopfversuch machen</translation>
    </message>
    <message>
        <source>The film wobbles at %1&#xa0;Hz: %2 at %3, %4&#xa0;px; predicted %5&#xa0;px.</source>
        <translation>Der Film wackelt bei %1&#xa0;Hz: %2 bei %3, %4&#xa0;px; vorhergesagt sind %5&#xa0;px.</translation>
    </message>
    <message>
        <source>The film is blind at %1&#xa0;Hz, where %2 is predicted with %3&#xa0;px.</source>
        <translation>Der Film ist blind bei %1&#xa0;Hz, wo %2 mit %3&#xa0;px vorhergesagt ist.</translation>
    </message>
    <message>
        <source>Nothing shows at %1&#xa0;Hz, where %2 is predicted with %3&#xa0;px.</source>
        <translation>Bei %1&#xa0;Hz zeigt sich nichts; vorhergesagt ist dort %2 mit %3&#xa0;px.</translation>
    </message>
    <message>
        <source>The film wobbles at %1&#xa0;Hz by %2&#xa0;px, which no order explains.</source>
        <translation>Der Film wackelt bei %1&#xa0;Hz um %2&#xa0;px, was keine Ordnung erklärt.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>what rings lies %1 off this craft&apos;s modes</source>
        <translation>was schwingt, liegt %1 neben den Eigenschwingungen dieses Kopters</translation>
    </message>
    <message>
        <source>weigh the bay and measure its tubes again</source>
        <translation>die Gondel wiegen und ihre Schläuche nachmessen</translation>
    </message>
    <message>
        <source>say what the sensor weighs, unless it is among the bay&apos;s parts</source>
        <translation>angeben, was der Sensor wiegt, falls er nicht unter den Teilen der Gondel steht</translation>
    </message>
    <message>
        <source>do the hang test first</source>
        <translation>zuerst den Hängeversuch machen</translation>
    </message>
    <message>
        <source>say how the sensor&apos;s axes lie</source>
        <translation>angeben, wie die Achsen des Sensors liegen</translation>
    </message>
    <message>
        <source>see whether masses, places and tubes are as in the file, or take the file of the craft that was plucked</source>
        <translation>nachsehen, ob Massen, Orte und Schläuche so sind wie in der Datei, oder die Datei des gezupften Kopters nehmen</translation>
    </message>
    <message>
        <source>%1 of the record are no ringing of six modes: clamp the airframe, take off what else may ring, and pluck again</source>
        <translation>%1 der Aufzeichnung sind kein Ausschwingen von sechs Eigenschwingungen: den Rahmen festklemmen, abnehmen, was sonst mitschwingen kann, und noch einmal zupfen</translation>
    </message>
    <message>
        <source>a dynamic ratio of %1 is none of rubber</source>
        <translation>eine dynamische Versteifung von %1 hat kein Gummi</translation>
    </message>
    <message>
        <source>the tubes pull %1 more than this craft&apos;s</source>
        <translation>die Schläuche ziehen %1 stärker als die dieses Kopters</translation>
    </message>
    <message>
        <source>the tubes pull %1 less than this craft&apos;s</source>
        <translation>die Schläuche ziehen %1 schwächer als die dieses Kopters</translation>
    </message>
    <message>
        <source>the tube&apos;s modulus is not measured: do the hang test</source>
        <translation>der Modul des Schlauchs ist nicht gemessen: den Hängeversuch machen</translation>
    </message>
    <message>
        <source>a dynamic ratio of %1 is high for silicone</source>
        <translation>eine dynamische Versteifung von %1 ist hoch für Silikon</translation>
    </message>
    <message>
        <source>%1 of the record are no ringing of six modes: pluck less far</source>
        <translation>%1 der Aufzeichnung sind kein Ausschwingen von sechs Eigenschwingungen: weniger weit zupfen</translation>
    </message>
    <message>
        <source>two modes alone rang: pluck it in other ways too</source>
        <translation>nur zwei Eigenschwingungen haben geschwungen: auch anders anzupfen</translation>
    </message>
    <message>
        <source>%1 of six modes rang, within %2 of this craft&apos;s</source>
        <translation>%1 von sechs Eigenschwingungen haben geschwungen, bis auf %2 wie die dieses Kopters</translation>
    </message>
    <message>
        <source>%1 to %2 s at %3 rpm</source>
        <translation>%1 bis %2 s mit %3 1/min</translation>
    </message>
    <message>
        <source>A multiple or a fraction of these speeds explains the recording nearly as well: compare one with a counter, or with the speed at which the craft hovers.</source>
        <translation>Ein Vielfaches oder ein Bruchteil dieser Drehzahlen erklärt die Aufnahme fast ebenso gut: eine davon mit einem Zähler vergleichen oder mit der Drehzahl im Schweben.</translation>
    </message>
    <message>
        <source>The speed is never steady for as long as a throttle needs, one and a half seconds</source>
        <translation>Die Drehzahl bleibt nirgends so lange gleich, wie es ein Gaswert braucht, anderthalb Sekunden</translation>
    </message>
    <message>
        <source>%1 throttles are given, but the speed was steady %2 times: %3</source>
        <translation>%1 Gaswerte sind angegeben, die Drehzahl blieb aber %2-mal gleich: %3</translation>
    </message>
    <message>
        <source>no rotor turns in this record</source>
        <translation>in dieser Aufnahme dreht sich kein Rotor</translation>
    </message>
    <message>
        <source>has no sound, acceleration or rotor speed</source>
        <translation>enthält weder Ton noch Beschleunigung noch Drehzahl</translation>
    </message>
    <message>
        <source>has no throttle column: say which throttle was held while the speed was steady, %1</source>
        <translation>hat keine Gasspalte: angeben, welches Gas gehalten wurde, während die Drehzahl gleich blieb, %1</translation>
    </message>
    <message>
        <source>a multiple of these speeds is nearly as likely</source>
        <translation>ein Vielfaches dieser Drehzahlen ist fast ebenso wahrscheinlich</translation>
    </message>
    <message>
        <source>has no column of acceleration</source>
        <translation>hat keine Spalte mit Beschleunigung</translation>
    </message>
    <message>
        <source>nothing says which way its columns measure: name them forward, left and up, or state the sensor&apos;s axes</source>
        <translation>nirgends steht, wohin die Spalten messen: sie vorn, links und oben nennen oder die Achsen des Sensors angeben</translation>
    </message>
    <message>
        <source>one tone a turn does not stand out of the noise</source>
        <translation>der Ton einmal je Umdrehung hebt sich nicht vom Rauschen ab</translation>
    </message>
    <message>
        <source>airframe&apos;s vibration, %1 s</source>
        <translation>Schwingung des Rahmens, %1 s</translation>
    </message>
    <message>
        <source>The rotors&apos; speed cannot be followed in this recording: it is the craft&apos;s at the recorded throttle. Correct the speed first.</source>
        <translation>Die Drehzahl lässt sich in dieser Aufnahme nicht verfolgen: sie ist die des Fluggeräts beim aufgezeichneten Gas. Erst die Drehzahl berichtigen.</translation>
    </message>
    <message>
        <source>A throttle is %1 %, must be from 0 to 100 %</source>
        <translation>Ein Gaswert ist %1 %, muss von 0 bis 100 % sein</translation>
    </message>
    <message>
        <source>the arm as the craft has it does not ring</source>
        <translation>der Ausleger, wie ihn das Fluggerät hat, schwingt nicht</translation>
    </message>
    <message>
        <source>%1 Hz</source>
        <translation>%1 Hz</translation>
    </message>
    <message>
        <source>It rings at %1, and the arm is computed to ring at %2 Hz up and down and %3 Hz sideways: is it this arm, with its motor on?</source>
        <translation>Es schwingt mit %1, und berechnet ist der Ausleger mit %2 Hz auf und ab und %3 Hz seitwärts: ist es dieser Ausleger, mit Motor?</translation>
    </message>
    <message>
        <source>the lines do not go with the speed as this craft&apos;s would: correct arms and tubes first, or look where the sensor sat</source>
        <translation>die Linien gehen nicht so mit der Drehzahl, wie sie es bei diesem Fluggerät täten: erst Ausleger und Schläuche berichtigen oder nachsehen, wo der Sensor saß</translation>
    </message>
    <message>
        <source>%1 gave no answer for too long and was ended</source>
        <translation>%1 hat zu lange nicht geantwortet und wurde beendet</translation>
    </message>
    <message>
        <source>a film is read with the programs ffprobe and ffmpeg: install the package ffmpeg, then try again</source>
        <translation>Filme werden mit den Programmen ffprobe und ffmpeg gelesen: das Paket ffmpeg installieren, dann noch einmal versuchen</translation>
    </message>
    <message>
        <source>the readout must lie between 0 and %1 ms</source>
        <translation>die Auslesezeit muss zwischen 0 und %1 ms liegen</translation>
    </message>
    <message>
        <source>the exposure must lie between 0 and 1 s</source>
        <translation>die Belichtungszeit muss zwischen 0 und 1 s liegen</translation>
    </message>
    <message>
        <source>the lowest frequency must lie above 0 and below the highest, that not above %1 Hz</source>
        <translation>die niedrigste Frequenz muss über 0 und unter der höchsten liegen, diese nicht über %1 Hz</translation>
    </message>
    <message>
        <source>the usable part of the film is shorter than a second</source>
        <translation>der brauchbare Teil des Films ist kürzer als eine Sekunde</translation>
    </message>
    <message>
        <source>what ffmpeg says of the frames is not understood: its version is too old or too new</source>
        <translation>was ffmpeg zu den Bildern sagt, wird nicht verstanden: seine Version ist zu alt oder zu neu</translation>
    </message>
    <message>
        <source>ffmpeg cannot decode this film</source>
        <translation>ffmpeg kann diesen Film nicht dekodieren</translation>
    </message>
    <message>
        <source>ffmpeg cannot decode this film: %1</source>
        <translation>ffmpeg kann diesen Film nicht dekodieren: %1</translation>
    </message>
    <message>
        <source>ffmpeg broke off after frame %1</source>
        <translation>ffmpeg ist nach Bild %1 abgebrochen</translation>
    </message>
    <message>
        <source>ffmpeg broke off after frame %1: %2</source>
        <translation>ffmpeg ist nach Bild %1 abgebrochen: %2</translation>
    </message>
    <message>
        <source>the size of the frames changes within the film: name a part where it stays</source>
        <translation>die Größe der Bilder ändert sich im Film: einen Teil nennen, in dem sie bleibt</translation>
    </message>
    <message>
        <source>all frames of this part are the same: it is a still picture</source>
        <translation>alle Bilder dieses Teils sind gleich: er ist ein Standbild</translation>
    </message>
    <message>
        <source>%1 of %2 frames repeat the one before and were left out</source>
        <translation>%1 von %2 Bildern wiederholen das vorige und wurden ausgelassen</translation>
    </message>
    <message>
        <source>only %1 of %2 frames could be decoded</source>
        <translation>nur %1 von %2 Bildern ließen sich dekodieren</translation>
    </message>
    <message>
        <source>the film cannot be opened: %1</source>
        <translation>der Film lässt sich nicht öffnen: %1</translation>
    </message>
    <message>
        <source>this is a folder: name one film in it</source>
        <translation>das ist ein Ordner: einen Film darin nennen</translation>
    </message>
    <message>
        <source>this is no ordinary file: save the film first</source>
        <translation>das ist keine gewöhnliche Datei: den Film zuerst speichern</translation>
    </message>
    <message>
        <source>a part of a film begins at 0&#xa0;s or later and ends after its beginning</source>
        <translation>ein Teil eines Films beginnt bei 0&#xa0;s oder später und endet nach seinem Anfang</translation>
    </message>
    <message>
        <source>the index of the film is missing: it was not finished, was not copied to its end, or is no film</source>
        <translation>das Verzeichnis des Films fehlt: er wurde nicht abgeschlossen, nicht ganz kopiert, oder ist kein Film</translation>
    </message>
    <message>
        <source>this is a file of another kind, a picture for instance, and no film</source>
        <translation>das ist eine Datei anderer Art, etwa ein Bild, und kein Film</translation>
    </message>
    <message>
        <source>this is no film that ffmpeg reads</source>
        <translation>das ist kein Film, den ffmpeg liest</translation>
    </message>
    <message>
        <source>this is no film that ffmpeg reads: %1</source>
        <translation>das ist kein Film, den ffmpeg liest: %1</translation>
    </message>
    <message>
        <source>ffprobe has more to say of this file than of any film</source>
        <translation>ffprobe sagt zu dieser Datei mehr, als zu einem Film zu sagen ist</translation>
    </message>
    <message>
        <source>there is sound in this file and no film</source>
        <translation>in dieser Datei ist Ton und kein Film</translation>
    </message>
    <message>
        <source>this is a single picture: a film has many</source>
        <translation>das ist ein einzelnes Bild: ein Film hat viele</translation>
    </message>
    <message>
        <source>there is no film in this file</source>
        <translation>in dieser Datei ist kein Film</translation>
    </message>
    <message>
        <source>the size of this film&apos;s frames is not known: it is damaged, or its form is not known to ffmpeg</source>
        <translation>die Größe der Bilder dieses Films ist nicht bekannt: er ist beschädigt, oder ffmpeg kennt seine Art nicht</translation>
    </message>
    <message>
        <source>the film has %1 × %2 pixels: at least %3 × %3 are needed</source>
        <translation>der Film hat %1 × %2 Pixel: mindestens %3 × %3 sind nötig</translation>
    </message>
    <message>
        <source>the film has %1 × %2 pixels: at most 8192 × 4608 are read</source>
        <translation>der Film hat %1 × %2 Pixel: höchstens 8192 × 4608 werden gelesen</translation>
    </message>
    <message>
        <source>there is no frame in this film</source>
        <translation>in diesem Film ist kein Bild</translation>
    </message>
    <message>
        <source>the film has more than %1 frames: name a part of it</source>
        <translation>der Film hat mehr als %1 Bilder: einen Teil davon nennen</translation>
    </message>
    <message>
        <source>there is no frame in this part: the film ends at %1&#xa0;s</source>
        <translation>in diesem Teil ist kein Bild: der Film endet bei %1&#xa0;s</translation>
    </message>
    <message>
        <source>there is a single frame, and vibration shows in many</source>
        <translation>da ist ein einziges Bild, und Vibration zeigt sich in vielen</translation>
    </message>
    <message>
        <source>the picture is higher than wide: where a program has turned it, its rows are not the sensor&apos;s and nothing read from them holds</source>
        <translation>das Bild ist höher als breit: hat ein Programm es gedreht, sind seine Zeilen nicht die des Sensors, und nichts aus ihnen Gelesenes gilt</translation>
    </message>
    <message>
        <source>the film breaks off at %1&#xa0;s of %2&#xa0;s</source>
        <translation>der Film bricht bei %1&#xa0;s von %2&#xa0;s ab</translation>
    </message>
    <message>
        <source>the film is interlaced, each frame two pictures of every other row: film progressive, where it says 30p or 60p</source>
        <translation>der Film ist verschachtelt (interlaced), jedes Bild zwei Bilder aus jeder zweiten Zeile: progressiv filmen, dort wo 30p oder 60p steht</translation>
    </message>
    <message>
        <source>the film does not say when each frame was taken: save it as MP4 or MOV</source>
        <translation>der Film sagt nicht, wann jedes Bild aufgenommen wurde: als MP4 oder MOV speichern</translation>
    </message>
    <message>
        <source>%1&#xa0;s to %2&#xa0;s left out: %3</source>
        <translation>%1&#xa0;s bis %2&#xa0;s ausgelassen: %3</translation>
    </message>
    <message>
        <source>a known frequency must be known to a quarter of the frame rate</source>
        <translation>eine bekannte Frequenz muss auf ein Viertel der Bildrate bekannt sein</translation>
    </message>
    <message>
        <source>%1 Hz is too close to a multiple of the frame rate: in every frame the same, it cannot be told from the scene</source>
        <translation>%1 Hz liegt zu nahe an einem Vielfachen der Bildrate: In jedem Bild gleich, ist es von der Szene nicht zu unterscheiden</translation>
    </message>
    <message>
        <source>no line stands out at %1 Hz</source>
        <translation>bei %1 Hz hebt sich keine Linie ab</translation>
    </message>
    <message>
        <source>at %1 Hz the frame moves as one and does not tell its readout</source>
        <translation>bei %1 Hz bewegt sich das Bild als Ganzes und verrät die Auslesezeit nicht</translation>
    </message>
    <message>
        <source>the times of the frames do not rise</source>
        <translation>die Zeiten der Bilder steigen nicht</translation>
    </message>
    <message>
        <source>the rows of a frame do not rise</source>
        <translation>die Zeilen eines Bildes steigen nicht</translation>
    </message>
    <message>
        <source>no %1 usable frames follow each other</source>
        <translation>keine %1 brauchbaren Bilder folgen aufeinander</translation>
    </message>
    <message>
        <source>too few frames show the same</source>
        <translation>zu wenige Bilder zeigen dasselbe</translation>
    </message>
    <message>
        <source>the picture has too little to hold on to</source>
        <translation>das Bild hat zu wenig Struktur</translation>
    </message>
    <message>
        <source>the picture jumps</source>
        <translation>das Bild springt</translation>
    </message>
    <message>
        <source>the film has too few frames</source>
        <translation>der Film hat zu wenige Bilder</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1&#xa0;%</translation>
    </message>
    <message>
        <source>%1 cannot be started: %2</source>
        <translation>%1 lässt sich nicht starten: %2</translation>
    </message>
    <message>
        <source>the picture is too small</source>
        <translation>das Bild ist zu klein</translation>
    </message>
    <message>
        <source>the picture is too dark or fades</source>
        <translation>das Bild ist zu dunkel oder wird ausgeblendet</translation>
    </message>
    <message>
        <source>the picture moves too fast</source>
        <translation>das Bild bewegt sich zu schnell</translation>
    </message>
    <message>
        <source>The readings end at %1 % throttle: above it these speeds are computed and not measured.</source>
        <translation>Die Ablesungen enden bei %1 % Gas: Darüber sind diese Drehzahlen berechnet und nicht gemessen.</translation>
    </message>
    <message>
        <source>orders that should be larger do not show, or what shows is many times stronger or weaker than predicted</source>
        <translation>Ordnungen, die größer sein müssten, zeigen sich nicht, oder was sich zeigt, ist um ein Vielfaches stärker oder schwächer als vorhergesagt</translation>
    </message>
    <message>
        <source>a single line is an order of some speed in any case: name the throttle</source>
        <translation>eine einzelne Linie ist immer Ordnung irgendeiner Drehzahl: das Gas nennen</translation>
    </message>
    <message>
        <source>what rings is too short or too noisy to compare its modes with this craft&apos;s: pluck again</source>
        <translation>was schwingt, ist zu kurz oder zu verrauscht, um seine Eigenschwingungen mit denen dieses Kopters zu vergleichen: noch einmal anzupfen</translation>
    </message>
    <message>
        <source>has %1 columns of acceleration, and a sensor whose axes are stated has three</source>
        <translation>hat %1 Spalten mit Beschleunigung, und ein Sensor mit angegebenen Achsen hat drei</translation>
    </message>
    <message>
        <source>%1&#xa0;s of film are more than the %2&#xa0;s that are read at once: name a part</source>
        <translation>%1&#xa0;s Film sind mehr als die %2&#xa0;s, die auf einmal gelesen werden: einen Teil nennen</translation>
    </message>
    <message>
        <source>a readout of %1&#xa0;ms is longer than a frame lasts at %2 frames a second</source>
        <translation>eine Auslesezeit von %1&#xa0;ms ist länger, als ein Bild bei %2 Bildern je Sekunde dauert</translation>
    </message>
    <message>
        <source>what shows is several times stronger or weaker than predicted, or an order that should show does not</source>
        <translation>was sich zeigt, ist mehrfach stärker oder schwächer als vorhergesagt, oder eine Ordnung, die sich zeigen müsste, fehlt</translation>
    </message>
    <message>
        <source>the film is %1 pixels wide, the camera of the setup %2: the prediction is scaled, and the readout may be another</source>
        <translation>der Film ist %1 Pixel breit, die Kamera des Kopters %2: Die Vorhersage wird umgerechnet, und die Auslesezeit kann eine andere sein</translation>
    </message>
    <message>
        <source>the film has %1 rows, the camera of the setup %2: where rows were cut off, its readout is shorter</source>
        <translation>der Film hat %1 Zeilen, die Kamera des Kopters %2: Wurden Zeilen abgeschnitten, ist seine Auslesezeit kürzer</translation>
    </message>
    <message>
        <source>the film has %1 frames a second, the camera of the setup %2: its readout may be another</source>
        <translation>der Film hat %1 Bilder je Sekunde, die Kamera des Kopters %2: Seine Auslesezeit kann eine andere sein</translation>
    </message>
    <message>
        <source>the craft is not computed to reach this speed</source>
        <translation>nach der Rechnung erreicht der Kopter diese Drehzahl nicht</translation>
    </message>
    <message>
        <source>the lines agree on a speed to %1 % only</source>
        <translation>die Linien stimmen in der Drehzahl nur auf %1 % überein</translation>
    </message>
    <message>
        <source>at the %1 that are heard no order of this craft&apos;s rotors lies at a line of the film</source>
        <translation>bei den %1, die zu hören sind, liegt keine Ordnung der Rotoren dieses Kopters an einer Linie des Films</translation>
    </message>
    <message>
        <source>%1 are more than this craft&apos;s rotors reach on a full pack, %2: nothing is predicted there</source>
        <translation>%1 sind mehr, als die Rotoren dieses Kopters mit vollem Akku erreichen, %2: Dort wird nichts vorhergesagt</translation>
    </message>
    <message>
        <source>The film wobbles at %1&#xa0;Hz: %2 at %3, %4&#xa0;px.</source>
        <translation>Der Film wackelt bei %1&#xa0;Hz: %2 bei %3, %4&#xa0;px.</translation>
    </message>
    <message>
        <source>The film wobbles at %1&#xa0;Hz by %2&#xa0;px.</source>
        <translation>Der Film wackelt bei %1&#xa0;Hz um %2&#xa0;px.</translation>
    </message>
    <message>
        <source>The film wobbles at %1&#xa0;Hz by %2&#xa0;px, which no order explains; the craft rings at %3&#xa0;Hz (%4).</source>
        <translation>Der Film wackelt bei %1&#xa0;Hz um %2&#xa0;px, was keine Ordnung erklärt; der Kopter schwingt von selbst bei %3&#xa0;Hz (%4).</translation>
    </message>
    <message>
        <source>A speed of rotors must be above 0</source>
        <translation>Eine Drehzahl von Rotoren muss über 0 liegen</translation>
    </message>
    <message>
        <source>On %1 of %2 films order 1 does not show: the unbalance may be less than the others say.</source>
        <translation>Auf %1 von %2 Filmen zeigt sich Ordnung 1 nicht: Die Unwucht kann kleiner sein, als die anderen sagen.</translation>
    </message>
    <message>
        <source>no rotor is heard for half of the film</source>
        <translation>die Hälfte des Films über ist kein Rotor zu hören</translation>
    </message>
    <message>
        <source>the rotors are heard to turn at %1 to %2 rpm: name a part in which they turn steadily</source>
        <translation>zu hören sind %1 bis %2 U/min: einen Teil nennen, in dem die Rotoren gleichmäßig drehen</translation>
    </message>
    <message>
        <source>a multiple or a fraction of %1 rpm explains the sound nearly as well</source>
        <translation>ein Vielfaches oder ein Bruchteil von %1 U/min erklärt den Ton fast ebenso gut</translation>
    </message>
    <message>
        <source>%1, for %2</source>
        <translation>%1, denn %2</translation>
    </message>
    <message>
        <source>%1, for %2, and %3</source>
        <translation>%1, denn %2, und %3</translation>
    </message>
    <message>
        <source>whole frames show only %1&#xa0;% of the shake that their bent rows tell of: the film was stabilised, and what it says of vibration may be wrong</source>
        <translation>ganze Bilder zeigen nur %1&#xa0;% des Zitterns, von dem ihre verbogenen Zeilen zeugen: Der Film wurde stabilisiert, und was er über Schwingungen sagt, kann falsch sein</translation>
    </message>
    <message>
        <source>ffmpeg shows far more frames than the film lists, and was ended</source>
        <translation>ffmpeg zeigt weit mehr Bilder, als der Film verzeichnet, und wurde beendet</translation>
    </message>
    <message>
        <source>a readout of %1&#xa0;ms is none: it must be above 0</source>
        <translation>eine Auslesezeit von %1&#xa0;ms ist keine: Sie muss über 0 liegen</translation>
    </message>
    <message>
        <source>the film has no sound in this part</source>
        <translation>der Film hat in diesem Teil keinen Ton</translation>
    </message>
    <message>
        <source>ffmpeg cannot decode the sound of this film: %1</source>
        <translation>ffmpeg kann den Ton dieses Films nicht dekodieren: %1</translation>
    </message>
    <message>
        <source>Throttle of the film</source>
        <translation>Gas des Films</translation>
    </message>
    <message>
        <source>Where the stick stood while it was filmed, 0 to 1; empty where that is not known.</source>
        <translation>Wo der Knüppel stand, während gefilmt wurde, 0 bis 1; leer, wo das nicht bekannt ist.</translation>
    </message>
    <message>
        <source>below %1</source>
        <translation>unter %1</translation>
    </message>
    <message>
        <source>The film wobbles at %1&#xa0;Hz by %4&#xa0;px: %2, if the rotors turn at %3; predicted %5&#xa0;px.</source>
        <translation>Der Film wackelt bei %1&#xa0;Hz um %4&#xa0;px: %2, wenn die Rotoren mit %3 drehen; vorhergesagt %5&#xa0;px.</translation>
    </message>
    <message>
        <source>The film wobbles at %1&#xa0;Hz by %4&#xa0;px: %2, if the rotors turn at %3.</source>
        <translation>Der Film wackelt bei %1&#xa0;Hz um %4&#xa0;px: %2, wenn die Rotoren mit %3 drehen.</translation>
    </message>
    <message>
        <source>its compression makes lines of its own out of those that are there, of up to %1&#xa0;% of them: wobble may be read too small by three times as much</source>
        <translation>seine Kompression macht aus den vorhandenen Linien eigene, mit bis zu %1&#xa0;% davon: das Wackeln kann um das Dreifache davon zu klein gelesen sein</translation>
    </message>
    <message>
        <source>the link points to itself</source>
        <translation>die Verknüpfung zeigt auf sich selbst</translation>
    </message>
    <message>
        <source>it is not a regular file</source>
        <translation>es ist keine gewöhnliche Datei</translation>
    </message>
    <message>
        <source>the %1 columns in use have more than %2 values together: leave out columns, or cut the recording</source>
        <translation>die %1 verwendeten Spalten haben zusammen mehr als %2 Werte: Spalten weglassen oder die Aufnahme kürzen</translation>
    </message>
    <message>
        <source>the search has %1 tubes to choose from, allowed up to %2</source>
        <translation>die Suche hat %1 Schläuche zur Auswahl, erlaubt sind bis zu %2</translation>
    </message>
    <message>
        <source>%1 would explain the lines nearly as well: film at another throttle, or with sound</source>
        <translation>%1 würden die Linien fast ebenso gut erklären: bei anderem Gas filmen oder mit Ton</translation>
    </message>
    <message>
        <source>a single line is an order of some speed in any case, and at that throttle of more than one: film with sound</source>
        <translation>eine einzelne Linie ist immer Ordnung irgendeiner Drehzahl, und bei diesem Gas von mehr als einer: mit Ton filmen</translation>
    </message>
    <message>
        <source>the lines shake whole frames and hardly bend their rows: nothing to hold against the predicted wobble</source>
        <translation>die Linien schütteln ganze Bilder und verbiegen ihre Zeilen kaum: nichts, was sich gegen das vorhergesagte Wackeln halten ließe</translation>
    </message>
    <message>
        <source>the line at %1&#xa0;Hz is taken for its alias at %2&#xa0;Hz</source>
        <translation>die Linie bei %1&#xa0;Hz wird für ihre Spiegelfrequenz bei %2&#xa0;Hz gehalten</translation>
    </message>
    <message>
        <source>the rotors are heard at %1; at %2 % throttle this craft is computed to turn them at %3 to %4</source>
        <translation>die Rotoren sind bei %1 zu hören; bei %2 % Gas dreht dieser Kopter sie nach der Rechnung mit %3 bis %4</translation>
    </message>
    <message>
        <source>a readout of %1&#xa0;ms was used; the film&apos;s own is %2 ± %3&#xa0;ms, where its line at %4&#xa0;Hz is %5 at %6 rpm</source>
        <translation>gelesen wurde mit einer Auslesezeit von %1&#xa0;ms; die des Films selbst ist %2 ± %3&#xa0;ms, wenn seine Linie bei %4&#xa0;Hz %5 bei %6 U/min ist</translation>
    </message>
    <message>
        <source>the sound settles no speed: %1</source>
        <translation>der Ton ergibt keine Drehzahl: %1</translation>
    </message>
    <message>
        <source>Nothing was looked for at %1&#xa0;Hz, where %2 is predicted with %3&#xa0;px.</source>
        <translation>Bei %1&#xa0;Hz wurde nicht gesucht; dort ist %2 mit %3&#xa0;px vorhergesagt.</translation>
    </message>
    <message>
        <source>they were stabilised</source>
        <translation>sie stabilisiert wurden</translation>
    </message>
    <message>
        <source>they leave their speed open</source>
        <translation>sie ihre Drehzahl offenlassen</translation>
    </message>
    <message>
        <source>the full pack is not computed to turn the rotors so fast</source>
        <translation>der volle Akku die Rotoren nach der Rechnung nicht so schnell dreht</translation>
    </message>
    <message>
        <source>Order 1 (unbalance) shows at fewer than three speeds of the rotors: of %1 films %2 are left out, since %3</source>
        <translation>Ordnung 1 (Unwucht) zeigt sich bei weniger als drei Drehzahlen der Rotoren: Von %1 Filmen bleiben %2 außer Betracht, da %3</translation>
    </message>
    <message>
        <source>%1 of %2 films are left out, since %3.</source>
        <translation>%1 von %2 Filmen bleiben außer Betracht, da %3.</translation>
    </message>
    <message>
        <source>%1&#xa0;s in %2 stretches from %3&#xa0;s to %4&#xa0;s left out: %5</source>
        <translation>%1&#xa0;s in %2 Abschnitten von %3&#xa0;s bis %4&#xa0;s ausgelassen: %5</translation>
    </message>
    <message>
        <source>an exposure of %1&#xa0;ms is none: it must be 0 or above</source>
        <translation>eine Belichtungszeit von %1&#xa0;ms gibt es nicht: Sie muss 0 oder mehr sein</translation>
    </message>
    <message>
        <source>an exposure of %1&#xa0;ms is longer than a frame lasts at %2 frames a second</source>
        <translation>eine Belichtungszeit von %1&#xa0;ms ist länger, als ein Bild bei %2 Bildern je Sekunde dauert</translation>
    </message>
    <message>
        <source>the film was stabilised</source>
        <translation>der Film wurde stabilisiert</translation>
    </message>
    <message>
        <source>%1: read once more with its own</source>
        <translation>%1: noch einmal mit der eigenen gelesen</translation>
    </message>
    <message>
        <source>no readout puts its lines where its sound or throttle has them</source>
        <translation>keine Auslesezeit bringt seine Linien dorthin, wo sie nach Ton oder Gas liegen</translation>
    </message>
    <message>
        <source>at another frame rate than the camera&apos;s its readout is not known, and it does not tell it</source>
        <translation>bei einer anderen Bildrate als der der Kamera ist seine Auslesezeit nicht bekannt, und er verrät sie nicht</translation>
    </message>
    <message>
        <source>film of a line at %1 Hz</source>
        <translation>Film mit einer Linie bei %1 Hz</translation>
    </message>
    <message>
        <source>readout of the camera</source>
        <translation>Auslesezeit der Kamera</translation>
    </message>
    <message>
        <source>one line of one film tells it</source>
        <translation>eine Linie eines Films verrät sie</translation>
    </message>
    <message>
        <source>Of %1 films %2 show the orders of this craft&apos;s rotors: three are needed</source>
        <translation>Von %1 Filmen zeigen %2 die Ordnungen der Rotoren dieses Kopters: Drei sind nötig</translation>
    </message>
    <message>
        <source>The arms&apos; and tubes&apos; modes are not measured: hang test and tap test first make this more certain.</source>
        <translation>Die Eigenschwingungen von Auslegern und Schläuchen sind nicht gemessen: Hängeversuch und Klopfversuch zuvor machen dies sicherer.</translation>
    </message>
    <message>
        <source>only %1 of %2 readings agree with the craft&apos;s modes: do the tap and pluck tests first</source>
        <translation>nur %1 von %2 Ablesungen passen zu den Eigenschwingungen des Kopters: zuerst Klopf- und Zupfversuch machen</translation>
    </message>
    <message>
        <source>another program has changed it just now</source>
        <translation>ein anderes Programm hat sie eben geändert</translation>
    </message>
    <message>
        <source>“%1” is more than any stand measures</source>
        <translation>„%1“ ist mehr, als irgendein Prüfstand misst</translation>
    </message>
    <message>
        <source>no bay carries such a sensor: as a part of it, it weighs up to %1&#xa0;g, is up to %2&#xa0;mm large and lies up to %3&#xa0;mm from the datum</source>
        <translation>so einen Sensor trägt keine Gondel: als Teil von ihr wiegt er bis zu %1&#xa0;g, ist bis zu %2&#xa0;mm groß und liegt bis zu %3&#xa0;mm vom Nullpunkt</translation>
    </message>
    <message>
        <source>this craft&apos;s full pack does not reach its speed</source>
        <translation>der volle Akku dieses Kopters erreicht seine Drehzahl nicht</translation>
    </message>
    <message>
        <source>its compression leaves small motion out, so that its floor is as high as %1&#xa0;px of the film: film at the highest bit rate that the camera has</source>
        <translation>seine Kompression lässt kleine Bewegungen weg, sodass seine Rauschgrenze bei %1&#xa0;px des Films liegt: mit der höchsten Bitrate filmen, die die Kamera hat</translation>
    </message>
    <message>
        <source>the same part of the same file was named before, as %1</source>
        <translation>derselbe Teil derselben Datei wurde schon genannt, als %1</translation>
    </message>
    <message>
        <source>the same file was named before, as %1, and the two parts share more than half of the shorter one</source>
        <translation>dieselbe Datei wurde schon genannt, als %1, und die beiden Teile haben mehr als die Hälfte des kürzeren gemeinsam</translation>
    </message>
</context>
<context>
    <name>stillbay::ui</name>
    <message>
        <source>the name must end in .png, .svg, .pdf or .csv</source>
        <translation>der Name muss auf .png, .svg, .pdf oder .csv enden</translation>
    </message>
    <message>
        <source>the text to be written does not read back as this craft</source>
        <translation>der geschriebene Text ergäbe beim Lesen nicht diesen Kopter</translation>
    </message>
    <message>
        <source>it is not a regular file</source>
        <translation>es ist keine gewöhnliche Datei</translation>
    </message>
    <message>
        <source>it is not of the kind that this version writes</source>
        <translation>das Format ist nicht das dieser Version</translation>
    </message>
    <message>
        <source>no font is installed to write the sheet with</source>
        <translation>für das Blatt ist keine Schrift installiert</translation>
    </message>
    <message>
        <source>another program holds its place</source>
        <translation>ein anderes Programm belegt den Platz dafür</translation>
    </message>
    <message>
        <source>the file is larger than %1 MB, far more than such a file needs</source>
        <translation>die Datei ist größer als %1&#xa0;MB, weit mehr, als eine solche Datei braucht</translation>
    </message>
    <message>
        <source>All that hangs on the tubes, on the kitchen scale: pack, camera, tray, screws and cables.</source>
        <translation>Alles, was an den Schläuchen hängt, auf der Küchenwaage: Akku, Kamera, Platte, Schrauben und Kabel.</translation>
    </message>
    <message>
        <source>How high the tubes hold the bay, from the middle of the centre plate; below is negative.</source>
        <translation>Wie hoch die Schläuche die Gondel halten, von der Mitte der Mittelplatte aus; darunter ist negativ.</translation>
    </message>
    <message>
        <source>From the front bay points to the rear ones.</source>
        <translation>Von den vorderen Gondelpunkten zu den hinteren.</translation>
    </message>
    <message>
        <source>From the left bay points to the right ones.</source>
        <translation>Von den linken Gondelpunkten zu den rechten.</translation>
    </message>
    <message>
        <source>The presets in %1 cannot be read: %2</source>
        <translation>Die Vorlagen in %1 sind nicht lesbar: %2</translation>
    </message>
    <message>
        <source>no table gives coefficients yet</source>
        <translation>noch keine Tabelle ergibt Beiwerte</translation>
    </message>
    <message>
        <source>no channel of the chosen part moves, or the part is too short</source>
        <translation>kein Kanal des gewählten Teils bewegt sich, oder der Teil ist zu kurz</translation>
    </message>
    <message>
        <source>A multiple or a fraction of this speed explains the recording nearly as well.</source>
        <translation>Ein Vielfaches oder ein Bruchteil dieser Drehzahl erklärt die Aufzeichnung fast ebenso gut.</translation>
    </message>
    <message>
        <source>No multiple and no fraction of this speed explains the recording as well.</source>
        <translation>Kein Vielfaches und kein Bruchteil dieser Drehzahl erklärt die Aufzeichnung ebenso gut.</translation>
    </message>
    <message>
        <source>where the sensor sat and what it weighs is not said: open How it is read</source>
        <translation>wo der Sensor saß und was er wiegt, ist nicht gesagt: bei „Wie sie gelesen wird“ eintragen</translation>
    </message>
    <message>
        <source>where the sensor sat is not said: open How it is read</source>
        <translation>wo der Sensor saß, ist nicht gesagt: bei „Wie sie gelesen wird“ eintragen</translation>
    </message>
    <message>
        <source>a film has no samples</source>
        <translation>ein Film hat keine Werte</translation>
    </message>
    <message>
        <source>%1&#xa0;s are read at once: for another part of the film say from when to when it is used</source>
        <translation>%1&#xa0;s werden auf einmal gelesen: Für einen anderen Teil des Films angeben, von wann bis wann er benutzt wird</translation>
    </message>
    <message>
        <source>another program has put a file there just now</source>
        <translation>ein anderes Programm hat dort eben eine Datei angelegt</translation>
    </message>
    <message>
        <source>the settings cannot be written</source>
        <translation>die Einstellungen lassen sich nicht schreiben</translation>
    </message>
    <message>
        <source>the settings file is damaged and cannot be put aside</source>
        <translation>die Datei der Einstellungen ist beschädigt und lässt sich nicht beiseitelegen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::BalanceButton</name>
    <message>
        <source>Balance with tape…</source>
        <translation>Mit Klebeband auswuchten…</translation>
    </message>
    <message>
        <source>Works out the unbalance from a strip of tape and its distance from the axis.</source>
        <translation>Berechnet die Unwucht aus einem Streifen Klebeband und seinem Abstand von der Achse.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::BalanceDialog</name>
    <message>
        <source>Balance with tape</source>
        <translation>Mit Klebeband auswuchten</translation>
    </message>
    <message>
        <source>A strip of tape on a blade changes the unbalance by its mass times its distance from the axis.</source>
        <translation>Ein Streifen Klebeband auf einem Blatt ändert die Unwucht um seine Masse mal seinen Abstand von der Achse.</translation>
    </message>
    <message>
        <source>Mass of the tape</source>
        <translation>Masse des Bandes</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>Weigh a long strip of the tape and take the share you stick on.</source>
        <translation>Einen langen Streifen des Bandes wiegen und den aufgeklebten Anteil nehmen.</translation>
    </message>
    <message>
        <source>Distance from the axis</source>
        <translation>Abstand von der Achse</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>From the motor&apos;s axis to the middle of the tape, at most to the propeller&apos;s tip.</source>
        <translation>Von der Motorachse bis zur Mitte des Bandes, höchstens bis zur Propellerspitze.</translation>
    </message>
    <message>
        <source>On the light side: takes from the unbalance</source>
        <translation>Auf der leichten Seite: verringert die Unwucht</translation>
    </message>
    <message>
        <source>On the heavy side: adds to the unbalance</source>
        <translation>Auf der schweren Seite: vergrößert die Unwucht</translation>
    </message>
    <message>
        <source>It balances the propeller: shows what the unbalance was</source>
        <translation>Es wuchtet den Propeller aus: zeigt, wie groß die Unwucht war</translation>
    </message>
    <message>
        <source>Where the tape sticks</source>
        <translation>Wo das Band klebt</translation>
    </message>
    <message>
        <source>&lt;p&gt;On a balancing stand the heavy blade sinks; the light side is opposite.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Auf dem Auswuchtbock sinkt das schwere Blatt; die leichte Seite liegt gegenüber.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Balance with the craft switched off, the battery unplugged and the propeller on a stand. Press the tape down all round and look at it before each flight: tape that flies off is worse than none. Replace propellers that are nicked, cracked or bent instead of balancing them.</source>
        <translation>Nur bei ausgeschaltetem Kopter, abgezogenem Akku und mit dem Propeller auf dem Bock auswuchten. Das Band ringsum andrücken und vor jedem Flug ansehen: Band, das davonfliegt, ist schlimmer als keines. Gekerbte, gerissene oder verbogene Propeller ersetzen statt auswuchten.</translation>
    </message>
    <message>
        <source>No balance grade: the speed at hover is not known.</source>
        <translation>Keine Wuchtgüte: Die Drehzahl im Schweben ist nicht bekannt.</translation>
    </message>
    <message>
        <source>Balance grade at hover (ISO 21940-11): G %1 now, G %2 then.</source>
        <translation>Wuchtgüte im Schweben (ISO 21940-11): jetzt G %1, dann G %2.</translation>
    </message>
    <message>
        <source>The tape is worth %1 g·mm.</source>
        <translation>Das Band bringt %1&#xa0;g·mm.</translation>
    </message>
    <message>
        <source>Unbalance: %1 g·mm now, %2 g·mm then.</source>
        <translation>Unwucht: jetzt %1&#xa0;g·mm, dann %2&#xa0;g·mm.</translation>
    </message>
    <message>
        <source>That is more tape than it takes: the other side is the heavy one then.</source>
        <translation>Das ist mehr Band als nötig: Dann ist die andere Seite die schwere.</translation>
    </message>
    <message>
        <source>balance with tape</source>
        <translation>mit Klebeband auswuchten</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::BayCanvas</name>
    <message>
        <source>Craft in space</source>
        <translation>Kopter im Raum</translation>
    </message>
    <message>
        <source>centre of mass</source>
        <translation>Schwerpunkt</translation>
    </message>
    <message>
        <source>camera</source>
        <translation>Kamera</translation>
    </message>
    <message>
        <source>x forward</source>
        <translation>x vorn</translation>
    </message>
    <message>
        <source>y left</source>
        <translation>y links</translation>
    </message>
    <message>
        <source>z up</source>
        <translation>z oben</translation>
    </message>
    <message>
        <source>elastic centre</source>
        <translation>elastischer Mittelpunkt</translation>
    </message>
    <message>
        <source>roll axis</source>
        <translation>Rollachse</translation>
    </message>
    <message>
        <source>pitch axis</source>
        <translation>Nickachse</translation>
    </message>
    <message>
        <source>Drag or use the arrow keys to turn the craft, the wheel or + and − to zoom, 0 to see all of it. Shift and a drag move it.</source>
        <translation>Ziehen oder Pfeiltasten drehen den Kopter, das Rad oder + und − ändern die Größe, 0 zeigt ihn ganz. Ziehen mit Umschalt verschiebt ihn.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::BayLegend</name>
    <message>
        <source>Legend of the bay view</source>
        <translation>Legende der Gondelansicht</translation>
    </message>
    <message>
        <source>solid: %1</source>
        <translation>ausgefüllt: %1</translation>
    </message>
    <message>
        <source>dashed: %1</source>
        <translation>gestrichelt: %1</translation>
    </message>
    <message>
        <source>round: %1</source>
        <translation>rund: %1</translation>
    </message>
    <message>
        <source>circle and cross: %1</source>
        <translation>Kreis und Kreuz: %1</translation>
    </message>
    <message>
        <source>diamond: %1</source>
        <translation>Raute: %1</translation>
    </message>
    <message>
        <source>dashes and dots: %1</source>
        <translation>Strichpunkte: %1</translation>
    </message>
    <message>
        <source>dotted: %1</source>
        <translation>gepunktet: %1</translation>
    </message>
    <message>
        <source>thick outline: %1</source>
        <translation>dicker Umriss: %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::BayView</name>
    <message>
        <source>What the drawing shows</source>
        <translation>Was die Zeichnung zeigt</translation>
    </message>
    <message>
        <source>as drawn</source>
        <translation>wie gezeichnet</translation>
    </message>
    <message>
        <source>at rest</source>
        <translation>in Ruhelage</translation>
    </message>
    <message>
        <source>Where the bay is shown</source>
        <translation>Wo die Gondel gezeigt wird</translation>
    </message>
    <message>
        <source>As it is held while it is fitted, or where it comes to rest.</source>
        <translation>Wie sie beim Einbau gehalten wird, oder wo sie zur Ruhe kommt.</translation>
    </message>
    <message>
        <source>still</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>Motion to show</source>
        <translation>Gezeigte Bewegung</translation>
    </message>
    <message>
        <source>One of the ways the bay swings by itself.</source>
        <translation>Eine der Eigenschwingungen der Gondel.</translation>
    </message>
    <message>
        <source>&amp;Bay</source>
        <translation>&amp;Gondel</translation>
    </message>
    <message>
        <source>&amp;Motion</source>
        <translation>Be&amp;wegung</translation>
    </message>
    <message>
        <source>Oblique</source>
        <translation>Schräg</translation>
    </message>
    <message>
        <source>Look from the front left, from above.</source>
        <translation>Von vorn links oben.</translation>
    </message>
    <message>
        <source>Front</source>
        <translation>Vorn</translation>
    </message>
    <message>
        <source>Look at the camera, against the flight.</source>
        <translation>Der Kamera entgegen, gegen die Flugrichtung.</translation>
    </message>
    <message>
        <source>Left</source>
        <translation>Links</translation>
    </message>
    <message>
        <source>Look from the left side.</source>
        <translation>Von der linken Seite.</translation>
    </message>
    <message>
        <source>Above</source>
        <translation>Oben</translation>
    </message>
    <message>
        <source>Look from above, forward is up.</source>
        <translation>Von oben, vorn ist oben.</translation>
    </message>
    <message>
        <source>View: %1</source>
        <translation>Ansicht: %1</translation>
    </message>
    <message>
        <source>no modes</source>
        <translation>keine Eigenschwingungen</translation>
    </message>
    <message>
        <source>in flight, %1 Hz: %2</source>
        <translation>im Flug, %1&#xa0;Hz: %2</translation>
    </message>
    <message>
        <source>on the bench, %1 Hz: %2</source>
        <translation>auf der Werkbank, %1&#xa0;Hz: %2</translation>
    </message>
    <message>
        <source>No answer for this craft: it is shown as drawn.</source>
        <translation>Kein Ergebnis für diesen Kopter: Er wird wie gezeichnet gezeigt.</translation>
    </message>
    <message>
        <source>The bay is shown where it is held while it is fitted.</source>
        <translation>Die Gondel wird gezeigt, wie sie beim Einbau gehalten wird.</translation>
    </message>
    <message>
        <source>This mode (%1) swings %2 times a second; here it is slowed down and drawn larger than life.</source>
        <translation>Diese Eigenschwingung (%1) schwingt %2-mal je Sekunde; hier verlangsamt und übertrieben gezeichnet.</translation>
    </message>
    <message>
        <source>Zoom to bay</source>
        <translation>Zur Gondel zoomen</translation>
    </message>
    <message>
        <source>Whole craft</source>
        <translation>Ganzer Kopter</translation>
    </message>
    <message>
        <source>Bay and tubes fill the drawing.</source>
        <translation>Gondel und Schläuche füllen die Zeichnung.</translation>
    </message>
    <message>
        <source>The whole craft fills the drawing.</source>
        <translation>Der ganze Kopter füllt die Zeichnung.</translation>
    </message>
    <message>
        <source>Forces sideways through the roll axis have no arm to roll it, those fore and aft through the pitch axis none to pitch it.</source>
        <translation>Kräfte quer durch die Rollachse haben keinen Hebel, sie zu rollen, solche längs durch die Nickachse keinen, sie zu nicken.</translation>
    </message>
    <message>
        <source>bay at rest</source>
        <translation>Gondel in Ruhe</translation>
    </message>
    <message>
        <source>bay as drawn</source>
        <translation>Gondel wie gezeichnet</translation>
    </message>
    <message>
        <source>tube</source>
        <translation>Schlauch</translation>
    </message>
    <message>
        <source>centre of mass</source>
        <translation>Schwerpunkt</translation>
    </message>
    <message>
        <source>elastic centre</source>
        <translation>elastischer Mittelpunkt</translation>
    </message>
    <message>
        <source>roll and pitch axis</source>
        <translation>Roll- und Nickachse</translation>
    </message>
    <message>
        <source>camera’s view</source>
        <translation>Blick der Kamera</translation>
    </message>
    <message>
        <source>the field’s part</source>
        <translation>Teil zum Feld</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::CampbellChart</name>
    <message>
        <source>faint %1</source>
        <translation>schwach %1</translation>
    </message>
    <message>
        <source>bad %1</source>
        <translation>stark %1</translation>
    </message>
    <message>
        <source>Campbell diagram</source>
        <translation>Campbell-Diagramm</translation>
    </message>
    <message>
        <source>cruise</source>
        <translation>Reiseflug</translation>
    </message>
    <message>
        <source>bay can swing</source>
        <translation>Eigenschwingung der Gondel</translation>
    </message>
    <message>
        <source>arms can swing</source>
        <translation>Eigenschwingung der Ausleger</translation>
    </message>
    <message>
        <source>they meet in cruise</source>
        <translation>Schnittpunkt im Reiseflug</translation>
    </message>
    <message>
        <source>Hover</source>
        <translation>Schweben</translation>
    </message>
    <message>
        <source>Cruise</source>
        <translation>Reiseflug</translation>
    </message>
    <message>
        <source>Names</source>
        <translation>Namen</translation>
    </message>
    <message>
        <source>Legend of the Campbell diagram</source>
        <translation>Legende zum Campbell-Diagramm</translation>
    </message>
    <message>
        <source>Frequency (Hz)</source>
        <translation>Frequenz (Hz)</translation>
    </message>
    <message>
        <source>Wobble of each order (px rms)</source>
        <translation>Wackeln je Ordnung (px&#xa0;eff.)</translation>
    </message>
    <message>
        <source>Throttle, full pack (%)</source>
        <translation>Gas, voller Akku (%)</translation>
    </message>
    <message>
        <source>Rotor speed (rpm)</source>
        <translation>Rotordrehzahl (U/min)</translation>
    </message>
    <message>
        <source>orders of the rotors: the more wobble, the wider</source>
        <translation>Ordnungen der Rotoren: je mehr Wackeln, desto breiter</translation>
    </message>
    <message>
        <source>%1, %2 Hz</source>
        <translation>%1, %2&#xa0;Hz</translation>
    </message>
    <message>
        <source>hover: full pack %1 %, empty pack %2 %</source>
        <translation>Schweben: voller Akku %1&#xa0;%, leerer Akku %2&#xa0;%</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>less than %1</source>
        <translation>weniger als %1</translation>
    </message>
    <message>
        <source>At %1 % throttle (%2 rpm) %3 meets %4 Hz (%5): %6 px, %7.</source>
        <translation>Bei %1&#xa0;% Gas (%2&#xa0;U/min) trifft %3 auf %4&#xa0;Hz (%5): %6&#xa0;px, %7.</translation>
    </message>
    <message>
        <source>The pack cannot hold this craft in the air.</source>
        <translation>Der Akku kann diesen Kopter nicht in der Luft halten.</translation>
    </message>
    <message>
        <source>Hover is at %1 rpm: %2 % throttle on a full pack; an empty one cannot hold the craft.</source>
        <translation>Schweben bei %1&#xa0;U/min: %2&#xa0;% Gas mit vollem Akku; ein leerer reicht nicht zum Schweben.</translation>
    </message>
    <message>
        <source>Hover is at %1 rpm: %2 % throttle on a full pack, %3 % on an empty one.</source>
        <translation>Schweben bei %1&#xa0;U/min: %2&#xa0;% Gas mit vollem Akku, %3&#xa0;% mit leerem.</translation>
    </message>
    <message>
        <source>The %1 runs from %2 to %3 Hz.</source>
        <translation>Die %1 reicht von %2 bis %3&#xa0;Hz.</translation>
    </message>
    <message>
        <source>%1 at %2 Hz</source>
        <translation>%1 bei %2&#xa0;Hz</translation>
    </message>
    <message>
        <source>What can swing: %1.</source>
        <translation>Was schwingen kann: %1.</translation>
    </message>
    <message>
        <source>No order meets any of them inside the cruise window.</source>
        <translation>Keine Ordnung trifft im Reiseflugbereich darauf.</translation>
    </message>
    <message>
        <source>%1 % throttle, %2 rpm</source>
        <translation>%1&#xa0;% Gas, %2&#xa0;U/min</translation>
    </message>
    <message>
        <source>%1: %2 Hz, %3 px, %4</source>
        <translation>%1: %2&#xa0;Hz, %3&#xa0;px, %4</translation>
    </message>
    <message>
        <source>No crossing in cruise</source>
        <translation>Kein Schnittpunkt im Reiseflug</translation>
    </message>
    <message>
        <source>Crossings in cruise: %1, none shows</source>
        <translation>Schnittpunkte im Reiseflug: %1, keiner zu sehen</translation>
    </message>
    <message>
        <source>Crossings in cruise: %1, faint up to %2&#xa0;px</source>
        <translation>Schnittpunkte im Reiseflug: %1, schwach bis %2&#xa0;px</translation>
    </message>
    <message>
        <source>Crossings in cruise: %1, bad up to %2&#xa0;px</source>
        <translation>Schnittpunkte im Reiseflug: %1, stark bis %2&#xa0;px</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::CandidatesModel</name>
    <message>
        <source>Tune</source>
        <translation>Abstimmung</translation>
    </message>
    <message>
        <source>Tube</source>
        <translation>Schlauch</translation>
    </message>
    <message>
        <source>Worst, full pack</source>
        <translation>Bei vollem Akku</translation>
    </message>
    <message>
        <source>Worst, empty pack</source>
        <translation>Bei leerem Akku</translation>
    </message>
    <message>
        <source>Clean in 9 of 10 builds</source>
        <translation>9 von 10 sauber</translation>
    </message>
    <message>
        <source>Worst in 9 of 10 builds</source>
        <translation>9 von 10 unter</translation>
    </message>
    <message>
        <source>most robust</source>
        <translation>am robustesten</translation>
    </message>
    <message>
        <source>best as planned</source>
        <translation>nach Plan beste</translation>
    </message>
    <message>
        <source>present</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>before</source>
        <translation>vorher</translation>
    </message>
    <message>
        <source>another</source>
        <translation>weitere</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Where it is held</source>
        <translation>Haltepunkte</translation>
    </message>
    <message>
        <source>as before</source>
        <translation>wie zuvor</translation>
    </message>
    <message>
        <source>%1&#xa0;mm</source>
        <translation>%1&#xa0;mm</translation>
    </message>
    <message>
        <source>%1&#xa0;%</source>
        <translation>%1&#xa0;%</translation>
    </message>
    <message>
        <source>%1°</source>
        <translation>%1°</translation>
    </message>
    <message>
        <source>%1&#xa0;px</source>
        <translation>%1&#xa0;px</translation>
    </message>
    <message>
        <source>empty %1</source>
        <translation>leer %1</translation>
    </message>
    <message>
        <source>clean %1</source>
        <translation>sauber %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::CandidatesTable</name>
    <message>
        <source>Tunes found</source>
        <translation>Gefundene Abstimmungen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::Chart</name>
    <message>
        <source>%1, drawing area</source>
        <translation>%1, Zeichenfläche</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ChartHeading</name>
    <message>
        <source>Reset zoom</source>
        <translation>Ganz zeigen</translation>
    </message>
    <message>
        <source>Reset the zoom of %1</source>
        <translation>%1 wieder ganz zeigen</translation>
    </message>
    <message>
        <source>Shows the whole range again (key 0 in the chart).</source>
        <translation>Zeigt wieder den ganzen Bereich (Taste 0 im Diagramm).</translation>
    </message>
    <message>
        <source>Copy, export or zoom %1</source>
        <translation>%1 kopieren, exportieren oder vergrößern</translation>
    </message>
    <message>
        <source>Copy, export, read as a table, zoom. In the chart the wheel zooms (with Shift up and down), dragging with Ctrl zooms into a frame, the middle button moves what is shown.</source>
        <translation>Kopieren, exportieren, als Tabelle lesen, vergrößern. Im Diagramm vergrößert das Mausrad (mit Umschalt auf und ab), Ziehen mit Strg vergrößert einen Ausschnitt, die mittlere Taste verschiebt.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ChartMenu</name>
    <message>
        <source>&amp;Copy the picture</source>
        <translation>&amp;Bild kopieren</translation>
    </message>
    <message>
        <source>Copy the &amp;numbers</source>
        <translation>&amp;Zahlen kopieren</translation>
    </message>
    <message>
        <source>&amp;Export…</source>
        <translation>&amp;Exportieren…</translation>
    </message>
    <message>
        <source>Show the numbers in a &amp;table</source>
        <translation>Zahlen als &amp;Tabelle zeigen</translation>
    </message>
    <message>
        <source>Zoom &amp;in</source>
        <translation>Ver&amp;größern</translation>
    </message>
    <message>
        <source>Zoom &amp;out</source>
        <translation>Ver&amp;kleinern</translation>
    </message>
    <message>
        <source>&amp;Reset the zoom</source>
        <translation>G&amp;anz zeigen</translation>
    </message>
    <message>
        <source>Copied the picture and the numbers of “%1”.</source>
        <translation>Bild und Zahlen von „%1“ kopiert.</translation>
    </message>
    <message>
        <source>Copied the numbers of “%1”.</source>
        <translation>Zahlen von „%1“ kopiert.</translation>
    </message>
    <message>
        <source>PNG picture (*.png)</source>
        <translation>PNG-Bild (*.png)</translation>
    </message>
    <message>
        <source>SVG drawing (*.svg)</source>
        <translation>SVG-Zeichnung (*.svg)</translation>
    </message>
    <message>
        <source>PDF page (*.pdf)</source>
        <translation>PDF-Seite (*.pdf)</translation>
    </message>
    <message>
        <source>CSV numbers (*.csv)</source>
        <translation>CSV-Zahlen (*.csv)</translation>
    </message>
    <message>
        <source>Export “%1” as</source>
        <translation>„%1“ exportieren als</translation>
    </message>
    <message>
        <source>Exported “%1” to %2</source>
        <translation>„%1“ nach %2 exportiert</translation>
    </message>
    <message>
        <source>Could not export to %1</source>
        <translation>Export nach %1 nicht möglich</translation>
    </message>
    <message>
        <source>%1. You can choose another name or folder.</source>
        <translation>%1. Anderen Namen oder Ordner wählen.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ChoiceQuestion</name>
    <message>
        <source>what is typical</source>
        <translation>was typisch ist</translation>
    </message>
    <message>
        <source>%1 (typical)</source>
        <translation>%1 (typisch)</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ColumnPane</name>
    <message>
        <source>Sample rate:</source>
        <translation>Abtastrate:</translation>
    </message>
    <message>
        <source>Columns of the recording</source>
        <translation>Spalten der Aufzeichnung</translation>
    </message>
    <message>
        <source>Column</source>
        <translation>Spalte</translation>
    </message>
    <message>
        <source>holds</source>
        <translation>enthält</translation>
    </message>
    <message>
        <source>unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>first values</source>
        <translation>erste Werte</translation>
    </message>
    <message>
        <source>Sample rate of the recording</source>
        <translation>Abtastrate der Aufzeichnung</translation>
    </message>
    <message>
        <source>How many samples a second. Where a column holds the time, that says it.</source>
        <translation>Wie viele Werte in der Sekunde. Wo eine Spalte die Zeit enthält, sagt sie es.</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>%1 of %2 columns used, %3 Hz</source>
        <translation>%1 von %2 Spalten benutzt, %3&#xa0;Hz</translation>
    </message>
    <message>
        <source>%1 of %2 columns used, sample rate not known</source>
        <translation>%1 von %2 Spalten benutzt, Abtastrate nicht bekannt</translation>
    </message>
    <message>
        <source>What column %1 holds</source>
        <translation>Was die Spalte %1 enthält</translation>
    </message>
    <message>
        <source>Unit of column %1</source>
        <translation>Einheit der Spalte %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ColumnTable</name>
    <message>
        <source>Column %1</source>
        <translation>Spalte %1</translation>
    </message>
    <message>
        <source>Columns of the table</source>
        <translation>Spalten der Tabelle</translation>
    </message>
    <message>
        <source>What %1 holds</source>
        <translation>Was %1 enthält</translation>
    </message>
    <message>
        <source>&lt;p&gt;What this column holds.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Was diese Spalte enthält.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Unit of %1</source>
        <translation>Einheit von %1</translation>
    </message>
    <message>
        <source>&lt;p&gt;The unit its numbers are in.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Die Einheit ihrer Zahlen.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>holds</source>
        <translation>enthält</translation>
    </message>
    <message>
        <source>unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>Left out: it lies far off the fit.</source>
        <translation>Ausgelassen: liegt weit neben der Ausgleichskurve.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::CompareChoices</name>
    <message>
        <source>Add another file…</source>
        <translation>Andere Datei dazu…</translation>
    </message>
    <message>
        <source>Remove the file</source>
        <translation>Datei entfernen</translation>
    </message>
    <message>
        <source>Crafts compared</source>
        <translation>Verglichene Kopter</translation>
    </message>
    <message>
        <source>The space bar ticks what is compared with the present tune.</source>
        <translation>Die Leertaste hakt an, was mit der jetzigen Abstimmung verglichen wird.</translation>
    </message>
    <message>
        <source>Compares the craft of another file, which is only read.</source>
        <translation>Vergleicht den Kopter einer anderen Datei, die nur gelesen wird.</translation>
    </message>
    <message>
        <source>Takes the chosen file&apos;s craft out of the comparison.</source>
        <translation>Nimmt den Kopter der gewählten Datei aus dem Vergleich.</translation>
    </message>
    <message>
        <source>Ticked ones lie over the present tune in both charts; in the table ≠ marks what differs from it. Ctrl+K keeps the present tune.</source>
        <translation>Angehakte liegen in beiden Diagrammen über der jetzigen Abstimmung; in der Tabelle zeigt ≠, was von ihr abweicht. Strg+K merkt die jetzige Abstimmung.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::CompareModel</name>
    <message>
        <source>%1, %2: %3, differs from the present tune</source>
        <translation>%1, %2: %3, anders als die jetzige Abstimmung</translation>
    </message>
    <message>
        <source>%1, %2: %3</source>
        <translation>%1, %2: %3</translation>
    </message>
    <message>
        <source>≠ %1</source>
        <translation>≠ %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::CompareView</name>
    <message>
        <source>Transmissibility, compared</source>
        <translation>Übertragungsfaktor im Vergleich</translation>
    </message>
    <message>
        <source>Wobble, compared</source>
        <translation>Wackeln im Vergleich</translation>
    </message>
    <message>
        <source>present tune</source>
        <translation>jetzige Abstimmung</translation>
    </message>
    <message>
        <source>Numbers compared</source>
        <translation>Zahlen im Vergleich</translation>
    </message>
    <message>
        <source>largest shift</source>
        <translation>größtes Verschieben</translation>
    </message>
    <message>
        <source>largest turn</source>
        <translation>größtes Drehen</translation>
    </message>
    <message>
        <source>Motion of the airframe, compared</source>
        <translation>Bewegung des Rahmens im Vergleich</translation>
    </message>
    <message>
        <source>The largest of the three axes: shifts along them, or turns about them. Only turns bend the picture.</source>
        <translation>Die größte der drei Achsen: Verschieben entlang oder Drehen um sie. Nur Drehungen verbiegen das Bild.</translation>
    </message>
    <message>
        <source>of the three axes</source>
        <translation>von drei Achsen</translation>
    </message>
    <message>
        <source>what the film shows</source>
        <translation>was der Film zeigt</translation>
    </message>
    <message>
        <source>Compare with the craft of a file</source>
        <translation>Mit dem Kopter einer Datei vergleichen</translation>
    </message>
    <message>
        <source>%1 cannot be compared: %2.</source>
        <translation>%1 lässt sich nicht vergleichen: %2.</translation>
    </message>
    <message>
        <source>The craft as it is now; it is always compared.</source>
        <translation>Der Kopter, wie er jetzt ist; er wird immer verglichen.</translation>
    </message>
    <message>
        <source>Kept tune %1</source>
        <translation>Gemerkte Abstimmung %1</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::CorrectionPane</name>
    <message>
        <source>%1 ± %2</source>
        <comment>measured value and spread</comment>
        <translation>%1 ± %2</translation>
    </message>
    <message>
        <source>Accept</source>
        <translation>Übernehmen</translation>
    </message>
    <message>
        <source>Correction %1</source>
        <translation>Korrektur %1</translation>
    </message>
    <message>
        <source>Number</source>
        <translation>Zahl</translation>
    </message>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>Accept the correction %1</source>
        <translation>Die Korrektur %1 übernehmen</translation>
    </message>
    <message>
        <source>Gives the craft the measured numbers, each with its spread, the measurement and the date as its source; one step to undo.</source>
        <translation>Gibt dem Kopter die gemessenen Zahlen, jede mit ihrer Streuung sowie Messung und Datum als Herkunft; in einem Schritt rückgängig zu machen.</translation>
    </message>
    <message>
        <source>Left unexplained: %1 % with these numbers, %2 % before.</source>
        <translation>Unerklärt bleiben %1&#xa0;% mit diesen Zahlen, vorher %2&#xa0;%.</translation>
    </message>
    <message>
        <source>Left unexplained: %1 % of what was measured.</source>
        <translation>Unerklärt bleiben %1&#xa0;% des Gemessenen.</translation>
    </message>
    <message>
        <source>Accepted</source>
        <translation>Übernommen</translation>
    </message>
    <message>
        <source>duty at %1</source>
        <comment>a throttle</comment>
        <translation>Tastgrad bei %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::CraftForm</name>
    <message>
        <source>Craft</source>
        <translation>Kopter</translation>
    </message>
    <message>
        <source>Craft: name</source>
        <translation>Kopter: Name</translation>
    </message>
    <message>
        <source>What you call this craft.</source>
        <translation>Frei gewählter Name dieses Kopters.</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Craft: notes</source>
        <translation>Kopter: Notizen</translation>
    </message>
    <message>
        <source>Whatever you want to remember of this craft; kept in its file.</source>
        <translation>Eigene Notizen zu diesem Kopter; sie stehen in seiner Datei.</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notizen</translation>
    </message>
    <message>
        <source>Airframe</source>
        <translation>Rahmen</translation>
    </message>
    <message>
        <source>Arms</source>
        <translation>Ausleger</translation>
    </message>
    <message>
        <source>Motors</source>
        <translation>Motoren</translation>
    </message>
    <message>
        <source>Propellers</source>
        <translation>Propeller</translation>
    </message>
    <message>
        <source>Battery</source>
        <translation>Akku</translation>
    </message>
    <message>
        <source>Excitation</source>
        <translation>Anregung</translation>
    </message>
    <message>
        <source>Drive</source>
        <translation>Antrieb</translation>
    </message>
    <message>
        <source>Bay</source>
        <translation>Gondel</translation>
    </message>
    <message>
        <source>Camera</source>
        <translation>Kamera</translation>
    </message>
    <message>
        <source>Tube</source>
        <translation>Schlauch</translation>
    </message>
    <message>
        <source>Mounts</source>
        <translation>Aufhängung</translation>
    </message>
    <message>
        <source>Flight</source>
        <translation>Flug</translation>
    </message>
    <message>
        <source>Limits</source>
        <translation>Grenzen</translation>
    </message>
    <message>
        <source>%1 of %2 yours, %3</source>
        <translation>%1 von %2 eigen, %3</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::CursorStrip</name>
    <message>
        <source>Numbers at the throttle cursor</source>
        <translation>Zahlen am Gaszeiger</translation>
    </message>
    <message>
        <source>At the throttle cursor: order 1 is the unbalance, B the blade pass, 2B twice that. In the film each beats against the frame rate at the frequency named.</source>
        <translation>Am Gaszeiger: Ordnung 1 ist die Unwucht, B der Blattdurchgang, 2B das Doppelte davon. Im Film ergibt jede mit der Bildrate eine Schwebung der genannten Frequenz.</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1&#xa0;%</translation>
    </message>
    <message>
        <source>%1 rpm</source>
        <translation>%1&#xa0;U/min</translation>
    </message>
    <message>
        <source>%1 Hz, %2</source>
        <comment>frequency, wobble</comment>
        <translation>%1&#xa0;Hz, %2</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::Desk</name>
    <message>
        <source>It says nothing: %1.</source>
        <translation>Sie sagt nichts: %1.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::EmptyPage</name>
    <message>
        <source>Add the sample recordings</source>
        <translation>Beispielaufzeichnungen hinzufügen</translation>
    </message>
    <message>
        <source>Add what a sensor, a microphone, a camera or a flight log took of this craft, by the button on the left or by dropping the file here: the tab lays it over the prediction and offers better numbers.</source>
        <translation>Hinzufügen, was ein Sensor, ein Mikrofon, eine Kamera oder ein Fluglog von diesem Kopter aufgezeichnet hat, mit der Schaltfläche links oder durch Ziehen der Datei hierher: Diese Seite legt es über die Vorhersage und bietet bessere Zahlen an.</translation>
    </message>
    <message>
        <source>Invented recordings of this sample craft, as if it had been built and differed from its file.</source>
        <translation>Erfundene Aufzeichnungen dieses Beispielkopters, als wäre er gebaut worden und wiche von seiner Datei ab.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ExposureButton</name>
    <message>
        <source>Shutter and filter…</source>
        <translation>Verschluss und Filter…</translation>
    </message>
    <message>
        <source>Works out the exposure from a shutter angle and a neutral-density filter.</source>
        <translation>Berechnet die Belichtungszeit aus Verschlusswinkel und Graufilter.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ExposureDialog</name>
    <message>
        <source>Shutter and filter</source>
        <translation>Verschluss und Filter</translation>
    </message>
    <message>
        <source>The camera takes %1 frames a second, %2 ms each. A shutter angle is the share of that time, out of 360°, in which a row collects light.</source>
        <translation>Die Kamera nimmt %1 Bilder je Sekunde auf, jedes %2&#xa0;ms lang. Der Verschlusswinkel ist der Anteil dieser Zeit, von 360°, in dem eine Zeile Licht sammelt.</translation>
    </message>
    <message>
        <source>Shutter angle without the filter</source>
        <translation>Verschlusswinkel ohne den Filter</translation>
    </message>
    <message>
        <source>°</source>
        <translation>°</translation>
    </message>
    <message>
        <source>180° is what film usually has: common practice.</source>
        <translation>180° ist beim Film üblich: gängige Praxis.</translation>
    </message>
    <message>
        <source>Exposure without the filter</source>
        <translation>Belichtungszeit ohne den Filter</translation>
    </message>
    <message>
        <source>ms</source>
        <translation>ms</translation>
    </message>
    <message>
        <source>How long a row collects light; 2 ms is a shutter of 1/500 s.</source>
        <translation>Wie lange eine Zeile Licht sammelt; 2&#xa0;ms sind 1/500&#xa0;s Verschlusszeit.</translation>
    </message>
    <message>
        <source>Filter put on</source>
        <translation>Aufgesetzter Filter</translation>
    </message>
    <message>
        <source>stops</source>
        <translation>Blenden</translation>
    </message>
    <message>
        <source>Each stop of a neutral-density filter halves the light, so that the exposure doubles; ND8 has three. Below zero: filter taken off.</source>
        <translation>Jede Blendenstufe eines Graufilters halbiert das Licht, sodass sich die Belichtungszeit verdoppelt; ND8 hat drei. Unter null: Filter abgenommen.</translation>
    </message>
    <message>
        <source>The camera, set to its own exposure, takes as much longer as the filter makes the picture darker. Longer exposures blur fast vibration away, and everything else that moves.</source>
        <translation>Die Kamera mit Belichtungsautomatik belichtet um so viel länger, wie der Filter das Bild verdunkelt. Längere Belichtungszeiten verwischen schnelle Schwingungen, und alles andere, was sich bewegt.</translation>
    </message>
    <message>
        <source>A filter of %1 stops would make 180° of it, as film usually has.</source>
        <translation>Ein Filter von %1&#xa0;Blenden ergäbe 180°, wie beim Film üblich.</translation>
    </message>
    <message>
        <source>Without a filter it is %1 stops above the 180° film usually has.</source>
        <translation>Ohne Filter sind es %1&#xa0;Blenden über den beim Film üblichen 180°.</translation>
    </message>
    <message>
        <source>No filter is put on or taken off.</source>
        <translation>Es wird kein Filter aufgesetzt oder abgenommen.</translation>
    </message>
    <message>
        <source>The filter lets 1/%1 of the light through.</source>
        <translation>Der Filter lässt 1/%1 des Lichts durch.</translation>
    </message>
    <message>
        <source>Without that filter %1 times the light comes in.</source>
        <translation>Ohne diesen Filter kommt %1-mal so viel Licht herein.</translation>
    </message>
    <message>
        <source>Exposure: %1 ms now, %2 ms then, a shutter angle of %3°.</source>
        <translation>Belichtungszeit: jetzt %1&#xa0;ms, dann %2&#xa0;ms, ein Verschlusswinkel von %3°.</translation>
    </message>
    <message>
        <source>Longer than the frame&apos;s time of %1 ms: the camera cannot do that. Take a weaker filter.</source>
        <translation>Länger als die Bilddauer von %1&#xa0;ms: Das kann die Kamera nicht. Einen schwächeren Filter nehmen.</translation>
    </message>
    <message>
        <source>set shutter and filter</source>
        <translation>Verschluss und Filter einstellen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FieldRow</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Allowed: %1 to %2 %3</source>
        <translation>Erlaubt: %1 bis %2 %3</translation>
    </message>
    <message>
        <source>change %1</source>
        <translation>%1 ändern</translation>
    </message>
    <message>
        <source>%1, one fewer</source>
        <translation>%1, eins weniger</translation>
    </message>
    <message>
        <source>%1, one more</source>
        <translation>%1, eins mehr</translation>
    </message>
    <message>
        <source>take %1 for your own</source>
        <translation>%1 als eigenen Wert nehmen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FileActions</name>
    <message>
        <source>&amp;Open…</source>
        <translation>Ö&amp;ffnen…</translation>
    </message>
    <message>
        <source>&amp;Save</source>
        <translation>&amp;Speichern</translation>
    </message>
    <message>
        <source>Save &amp;as…</source>
        <translation>Speichern &amp;unter…</translation>
    </message>
    <message>
        <source>Open a sa&amp;mple</source>
        <translation>&amp;Beispiel öffnen</translation>
    </message>
    <message>
        <source>Could not open %1</source>
        <translation>%1 ließ sich nicht öffnen</translation>
    </message>
    <message>
        <source>Could not open the sample</source>
        <translation>Das Beispiel ließ sich nicht öffnen</translation>
    </message>
    <message>
        <source>Opened %1</source>
        <translation>%1 geöffnet</translation>
    </message>
    <message>
        <source>Could not restore %1</source>
        <translation>%1 ließ sich nicht wiederherstellen</translation>
    </message>
    <message>
        <source>Could not save %1</source>
        <translation>%1 ließ sich nicht speichern</translation>
    </message>
    <message>
        <source>%1. The file on disk is as it was; you can save under another name.</source>
        <translation>%1. Die Datei auf der Platte ist unverändert; Speichern unter einem anderen Namen ist möglich.</translation>
    </message>
    <message>
        <source>Saved %1, but without a copy of the version before</source>
        <translation>Gespeichert: %1, aber ohne Kopie der vorigen Fassung</translation>
    </message>
    <message>
        <source>%1.bak: %2</source>
        <translation>%1.bak: %2</translation>
    </message>
    <message>
        <source>Changed by another program</source>
        <translation>Von einem anderen Programm geändert</translation>
    </message>
    <message>
        <source>%1 has changed on disk since it was read here. Saving replaces that version.</source>
        <translation>%1 wurde auf der Platte geändert, seit die Datei hier gelesen wurde. Speichern ersetzt jene Fassung.</translation>
    </message>
    <message>
        <source>&amp;Replace it</source>
        <translation>&amp;Ersetzen</translation>
    </message>
    <message>
        <source>Save the craft as</source>
        <translation>Kopter speichern unter</translation>
    </message>
    <message>
        <source>Open a craft</source>
        <translation>Kopter öffnen</translation>
    </message>
    <message>
        <source>Unsaved changes</source>
        <translation>Nicht gespeicherte Änderungen</translation>
    </message>
    <message>
        <source>Save the changes to %1 first?</source>
        <translation>Änderungen an %1 zuerst speichern?</translation>
    </message>
    <message>
        <source>%1 has changed on disk since it was read here, and cannot be read now. Saving replaces what is there, without a copy.</source>
        <translation>%1 wurde auf der Platte geändert, seit die Datei hier gelesen wurde, und ist jetzt nicht lesbar. Speichern ersetzt, was dort ist, ohne eine Kopie.</translation>
    </message>
    <message>
        <source>Could not make the new craft</source>
        <translation>Der neue Kopter ließ sich nicht anlegen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FileGuard</name>
    <message>
        <source>%1 is open in another window too</source>
        <translation>%1 ist auch in einem anderen Fenster offen</translation>
    </message>
    <message>
        <source>What is saved in one window does not show in the other by itself; each asks before it overwrites the other&apos;s work.</source>
        <translation>Was in einem Fenster gespeichert wird, erscheint im anderen nicht von selbst; beide fragen, bevor sie die Arbeit des anderen überschreiben.</translation>
    </message>
    <message>
        <source>%1 was changed by another program</source>
        <translation>%1 wurde von einem anderen Programm geändert</translation>
    </message>
    <message>
        <source>Reloading drops your unsaved changes; keeping yours lets the next save replace the other version.</source>
        <translation>Neu laden verwirft die nicht gespeicherten Änderungen; wird die eigene Fassung behalten, ersetzt das nächste Speichern die andere.</translation>
    </message>
    <message>
        <source>Keeping yours lets the next save replace the other version.</source>
        <translation>Wird die eigene Fassung behalten, ersetzt das nächste Speichern die andere.</translation>
    </message>
    <message>
        <source>Reload</source>
        <translation>Neu laden</translation>
    </message>
    <message>
        <source>Opens the file as it is on disk now.</source>
        <translation>Öffnet die Datei, wie sie jetzt auf der Platte steht.</translation>
    </message>
    <message>
        <source>Keep mine</source>
        <translation>Eigene behalten</translation>
    </message>
    <message>
        <source>Goes on with the craft in this window.</source>
        <translation>Macht mit dem Kopter in diesem Fenster weiter.</translation>
    </message>
    <message>
        <source>%1 was moved or deleted by another program</source>
        <translation>%1 wurde von einem anderen Programm verschoben oder gelöscht</translation>
    </message>
    <message>
        <source>The craft is still in this window; saving writes the file anew.</source>
        <translation>Der Kopter ist noch in diesem Fenster; Speichern schreibt die Datei neu.</translation>
    </message>
    <message>
        <source>Goes on with the craft in this window, as unsaved work.</source>
        <translation>Macht mit dem Kopter in diesem Fenster weiter, als nicht gespeicherte Arbeit.</translation>
    </message>
    <message>
        <source>%1 was changed by another program and cannot be read</source>
        <translation>%1 wurde von einem anderen Programm geändert und ist nicht lesbar</translation>
    </message>
    <message>
        <source>%1. The craft is still in this window; keeping yours lets the next save replace what is there now.</source>
        <translation>%1. Der Kopter ist noch in diesem Fenster; wird die eigene Fassung behalten, ersetzt das nächste Speichern, was jetzt dort ist.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FilmDesk</name>
    <message>
        <source>Reading the film…</source>
        <translation>Der Film wird gelesen …</translation>
    </message>
    <message>
        <source>Reading %1, too…</source>
        <translation>%1 wird auch gelesen …</translation>
    </message>
    <message>
        <source>Seeking what it shows…</source>
        <translation>Was er zeigt, wird gesucht …</translation>
    </message>
    <message>
        <source>It cannot be read.</source>
        <translation>Er lässt sich nicht lesen.</translation>
    </message>
    <message>
        <source>Working out what it shows: film %1 of %2…</source>
        <translation>Was er zeigt, wird berechnet: Film %1 von %2&#xa0;…</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FilmFrame</name>
    <message>
        <source>Frame of the film</source>
        <translation>Bild des Films</translation>
    </message>
    <message>
        <source>A frame as the sensor&apos;s rows took it, and how far its rows stand off a straight line: solid across, dashed up. The line through the picture hangs as a plumb line would look in it, bent so many times more than in the film.</source>
        <translation>Ein Bild, wie die Zeilen des Sensors es aufgenommen haben, und wie weit seine Zeilen von einer Geraden abstehen: durchgezogen quer, gestrichelt nach oben. Die Linie im Bild hängt so, wie ein Lot darin aussähe, um die angegebene Zahl vergrößert.</translation>
    </message>
    <message>
        <source>Frame at %1 s says nothing</source>
        <translation>Bild bei %1 s sagt nichts</translation>
    </message>
    <message>
        <source>Frame at %1 s: bent by %2 px (rms)</source>
        <translation>Bild bei %1 s: um %2 px (effektiv) verbogen</translation>
    </message>
    <message>
        <source>says nothing</source>
        <translation>sagt nichts</translation>
    </message>
    <message>
        <source>across</source>
        <translation>quer</translation>
    </message>
    <message>
        <source>up</source>
        <comment>direction in a picture</comment>
        <translation>nach oben</translation>
    </message>
    <message>
        <source>bend of its rows, ×%1</source>
        <translation>Biegung seiner Zeilen, ×%1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FilmPage</name>
    <message>
        <source>Filmed at a throttle of</source>
        <translation>Gefilmt bei einem Gas von</translation>
    </message>
    <message>
        <source>Ticked: where the stick stood is known, which settles what each line is. Otherwise the throttle that explains most of the lines is found.</source>
        <translation>Angehakt: Bekannt ist, wo der Knüppel stand; damit steht fest, was jede Linie ist. Sonst wird das Gas gesucht, das die meisten Linien erklärt.</translation>
    </message>
    <message>
        <source>Throttle of the film</source>
        <translation>Gas des Films</translation>
    </message>
    <message>
        <source>They stand among the craft&apos;s numbers, under the camera, and belong to the size and rate that was filmed with.</source>
        <translation>Sie stehen bei den Zahlen des Kopters, unter der Kamera, und gehören zu der Bildgröße und Bildrate, mit der gefilmt wurde.</translation>
    </message>
    <message>
        <source>Which frame is shown</source>
        <translation>Welches Bild zu sehen ist</translation>
    </message>
    <message>
        <source>Goes through frames of the film.</source>
        <translation>Geht durch Bilder des Films.</translation>
    </message>
    <message>
        <source>%1 × %2 pixels, %3 frames a second, %4 frames read</source>
        <translation>%1 × %2 Pixel, %3 Bilder je Sekunde, %4 Bilder gelesen</translation>
    </message>
    <message>
        <source>Readout %1 ms, exposure %2 ms, as the craft has them.</source>
        <translation>Auslesezeit %1 ms, Belichtung %2 ms, wie beim Kopter angegeben.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FilmedPanel</name>
    <message>
        <source>Slow</source>
        <translation>Langsam</translation>
    </message>
    <message>
        <source>Without tubes</source>
        <translation>Ohne Schläuche</translation>
    </message>
    <message>
        <source>A drawn scene, bent row by row as the rolling shutter records it at the throttle looked at, and smeared by the exposure. Motors turn at slightly different speeds, so their excitations are drawn out of step: over many frames the picture wobbles by the number below.</source>
        <translation>Eine gezeichnete Szene, Zeile für Zeile verbogen, wie der Rolling Shutter sie beim gewählten Gas aufnimmt, und durch die Belichtungszeit verwischt. Motoren drehen etwas verschieden schnell, darum sind ihre Anregungen außer Takt gezeichnet: Über viele Bilder gemittelt wackelt der Film so stark wie darunter angegeben.</translation>
    </message>
    <message>
        <source>Wobble at the throttle looked at</source>
        <translation>Wackeln beim gewählten Gas</translation>
    </message>
    <message>
        <source>As filmed</source>
        <translation>So im Film</translation>
    </message>
    <message>
        <source>×%1</source>
        <translation>×%1</translation>
    </message>
    <message>
        <source>Wobble drawn %1 times</source>
        <translation>Wackeln %1-fach gezeichnet</translation>
    </message>
    <message>
        <source>The wobble as large as it is in the film. The picture here is smaller than the film, and so is the wobble.</source>
        <translation>Das Wackeln so groß, wie es im Film ist. Das Bild hier ist kleiner als der Film, und das Wackeln ebenso.</translation>
    </message>
    <message>
        <source>The wobble drawn %1 times larger than it is, and marked so in the picture.</source>
        <translation>Das Wackeln %1-mal so groß gezeichnet, wie es ist, und im Bild so vermerkt.</translation>
    </message>
    <message>
        <source>Plays the film frame by frame at the camera&apos;s own rate, at most 60 a second; a camera that is faster is slowed down to that. Still, it shows the first frame.</source>
        <translation>Spielt den Film Bild für Bild mit der Bildrate der Kamera ab, höchstens 60 je Sekunde; eine schnellere Kamera wird darauf gebremst. Angehalten zeigt er das erste Bild.</translation>
    </message>
    <message>
        <source>Slow motion</source>
        <translation>Zeitlupe</translation>
    </message>
    <message>
        <source>Plays ten times slower, so that the beat can be followed.</source>
        <translation>Spielt zehnmal langsamer ab, damit man der Schwebung folgen kann.</translation>
    </message>
    <message>
        <source>Right half without tubes</source>
        <translation>Rechte Hälfte ohne Schläuche</translation>
    </message>
    <message>
        <source>The right half shows what the same camera would film at the same throttle, rigidly mounted instead of on tubes.</source>
        <translation>Die rechte Hälfte zeigt, was dieselbe Kamera beim gleichen Gas filmen würde, starr befestigt statt auf Schläuchen.</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Play</source>
        <translation>Start</translation>
    </message>
    <message>
        <source>Stop the film</source>
        <translation>Film anhalten</translation>
    </message>
    <message>
        <source>Play the film</source>
        <translation>Film abspielen</translation>
    </message>
    <message>
        <source>Without tubes: %1 px.</source>
        <translation>Ohne Schläuche: %1&#xa0;px.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FilmedPicture</name>
    <message>
        <source>Picture as filmed</source>
        <translation>Bild, wie es im Film ist</translation>
    </message>
    <message>
        <source>wobble drawn ×%1</source>
        <translation>Wackeln ×%1 gezeichnet</translation>
    </message>
    <message>
        <source>without tubes</source>
        <translation>ohne Schläuche</translation>
    </message>
    <message>
        <source>without tubes: no answer</source>
        <translation>ohne Schläuche: kein Ergebnis</translation>
    </message>
    <message>
        <source>on the tubes</source>
        <translation>an den Schläuchen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FindChoices</name>
    <message>
        <source>What may change</source>
        <translation>Was sich ändern darf</translation>
    </message>
    <message>
        <source>Keeps the tube that the craft has now.</source>
        <translation>Behält den jetzigen Schlauch des Kopters.</translation>
    </message>
    <message>
        <source>Tries every ticked tube. The tube stock is yours, and the same for every craft.</source>
        <translation>Probiert jeden angehakten Schlauch. Der eigene Vorrat ist für jeden Kopter derselbe.</translation>
    </message>
    <message>
        <source>Which tube</source>
        <translation>Welcher Schlauch</translation>
    </message>
    <message>
        <source>no tube in the stock is ticked</source>
        <translation>im Schlauchvorrat ist kein Schlauch angehakt</translation>
    </message>
    <message>
        <source>nothing may change; tick a length, or let the tube be chosen</source>
        <translation>nichts ist zum Ändern freigegeben; eine Länge anhaken oder den Schlauch wählen lassen</translation>
    </message>
    <message>
        <source>The best of those ticked in the tube stock</source>
        <translation>Der beste der im Schlauchvorrat angehakten</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>from the tube stock</source>
        <translation>aus dem Schlauchvorrat</translation>
    </message>
    <message>
        <source>The present tube: %1</source>
        <translation>Der jetzige Schlauch: %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FindPane</name>
    <message>
        <source>What to cut</source>
        <translation>Was zuzuschneiden ist</translation>
    </message>
    <message>
        <source>Find a tune</source>
        <translation>Abstimmung finden</translation>
    </message>
    <message>
        <source>Close the search for a tune</source>
        <translation>Suche nach einer Abstimmung schließen</translation>
    </message>
    <message>
        <source>Closes the search, and stops it (Escape).</source>
        <translation>Schließt die Suche und hält sie an (Esc).</translation>
    </message>
    <message>
        <source>Find the best</source>
        <translation>Beste finden</translation>
    </message>
    <message>
        <source>Looks through the ranges for what wobbles least.</source>
        <translation>Sucht in den Bereichen, was am wenigsten wackelt.</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Ends the search without an answer.</source>
        <translation>Beendet die Suche ohne Ergebnis.</translation>
    </message>
    <message>
        <source>How robust is the present tune?</source>
        <translation>Wie robust ist die jetzige Abstimmung?</translation>
    </message>
    <message>
        <source>Shows how the present tune holds in builds that differ a little from the plan.</source>
        <translation>Zeigt, wie sich die jetzige Abstimmung in Nachbauten hält, die vom Plan ein wenig abweichen.</translation>
    </message>
    <message>
        <source>Progress of the search</source>
        <translation>Fortschritt der Suche</translation>
    </message>
    <message>
        <source>How many were tried</source>
        <translation>Zahl der Versuche</translation>
    </message>
    <message>
        <source>Take this tune</source>
        <translation>Abstimmung übernehmen</translation>
    </message>
    <message>
        <source>Makes the chosen tune the present one; one step for undo (Enter).</source>
        <translation>Macht die gewählte Abstimmung zur jetzigen; in einem Schritt rückgängig zu machen (Eingabe).</translation>
    </message>
    <message>
        <source>Keep this tune</source>
        <translation>Abstimmung merken</translation>
    </message>
    <message>
        <source>Puts the chosen tune among the kept ones; the craft stays as it is.</source>
        <translation>Merkt die gewählte Abstimmung; der Kopter bleibt, wie er ist.</translation>
    </message>
    <message>
        <source>All this is a prediction: check the finished tune on the bench, propellers off, before you fly it.</source>
        <translation>All das ist eine Vorhersage: Die fertige Abstimmung vor dem Flug auf der Werkbank prüfen, ohne Propeller.</translation>
    </message>
    <message>
        <source>Stopped: the craft has changed. Find again for the craft as it is now.</source>
        <translation>Angehalten: Der Kopter hat sich geändert. Für den jetzigen Stand erneut suchen.</translation>
    </message>
    <message>
        <source>Not started: %1.</source>
        <translation>Nicht begonnen: %1.</translation>
    </message>
    <message>
        <source>Designs and builds tried so far: %1</source>
        <translation>Entwürfe und Nachbauten bisher probiert: %1</translation>
    </message>
    <message>
        <source>Nothing found: %1.</source>
        <translation>Nichts gefunden: %1.</translation>
    </message>
    <message>
        <source>Designs and builds tried: %1</source>
        <translation>Entwürfe und Nachbauten probiert: %1</translation>
    </message>
    <message>
        <source>Take a tune that was found</source>
        <translation>Gefundene Abstimmung übernehmen</translation>
    </message>
    <message>
        <source>Taken; undo takes it back.</source>
        <translation>Übernommen; Rückgängig nimmt es zurück.</translation>
    </message>
    <message>
        <source>Keep a tune</source>
        <translation>Abstimmung merken</translation>
    </message>
    <message>
        <source>Kept as “%1”.</source>
        <translation>Gemerkt als „%1“.</translation>
    </message>
    <message>
        <source>The craft has changed since; this answer is for the craft before.</source>
        <translation>Der Kopter hat sich seither geändert; dieses Ergebnis gilt für den Stand davor.</translation>
    </message>
    <message>
        <source>Looking…</source>
        <translation>Sucht…</translation>
    </message>
    <message>
        <source>Tick what may change, then find what makes the film wobble least and holds in builds that differ a little from the plan.</source>
        <translation>Anhaken, was sich ändern darf; dann finden, womit der Film am wenigsten wackelt, auch in Nachbauten, die vom Plan ein wenig abweichen.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FindingsPanel</name>
    <message>
        <source>Findings</source>
        <translation>Befunde</translation>
    </message>
    <message>
        <source>Undo the last step, or change the tubes, mounts or bay.</source>
        <translation>Den letzten Schritt rückgängig machen oder Schläuche, Aufhängung oder Gondel ändern.</translation>
    </message>
    <message>
        <source>Show the field</source>
        <translation>Das Feld zeigen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FitChart</name>
    <message>
        <source>spread</source>
        <translation>Streuung</translation>
    </message>
    <message>
        <source>fit</source>
        <translation>Ausgleichskurve</translation>
    </message>
    <message>
        <source>rows of the table</source>
        <translation>Zeilen der Tabelle</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>No points yet.</source>
        <translation>Noch keine Punkte.</translation>
    </message>
    <message>
        <source>%1 by the fit (%2)</source>
        <translation>%1 nach der Ausgleichskurve (%2)</translation>
    </message>
    <message>
        <source>%1 rows of the table and a fit through them, up to %2&#xa0;%3.</source>
        <translation>%1 Zeilen der Tabelle und eine Ausgleichskurve durch sie, bis %2&#xa0;%3.</translation>
    </message>
    <message>
        <source>%1&#xa0;%2: %3&#xa0;%4 by the fit</source>
        <translation>%1&#xa0;%2: %3&#xa0;%4 nach der Ausgleichskurve</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::FlightNotesPane</name>
    <message>
        <source>Add this note</source>
        <translation>Diese Notiz hinzufügen</translation>
    </message>
    <message>
        <source>Remove the chosen note</source>
        <translation>Die gewählte Notiz entfernen</translation>
    </message>
    <message>
        <source>Flight notes</source>
        <translation>Flugnotizen</translation>
    </message>
    <message>
        <source>Flight notes of this craft</source>
        <translation>Flugnotizen dieses Kopters</translation>
    </message>
    <message>
        <source>From (%)</source>
        <translation>Von (%)</translation>
    </message>
    <message>
        <source>To (%)</source>
        <translation>Bis (%)</translation>
    </message>
    <message>
        <source>Seen</source>
        <translation>Gesehen</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>What you saw in a film at which throttle. The tab Tuning shows the notes over the computed wobble.</source>
        <translation>Was in einem Film bei welchem Gas zu sehen war. Die Seite „Abstimmen“ zeigt die Notizen über dem berechneten Wackeln.</translation>
    </message>
    <message>
        <source>Throttle from which it was seen</source>
        <translation>Gas, ab dem es zu sehen war</translation>
    </message>
    <message>
        <source>Throttle up to which it was seen</source>
        <translation>Gas, bis zu dem es zu sehen war</translation>
    </message>
    <message>
        <source>How the film looked</source>
        <translation>Wie der Film aussah</translation>
    </message>
    <message>
        <source>Note on what was seen</source>
        <translation>Notiz zum Gesehenen</translation>
    </message>
    <message>
        <source>note, if any</source>
        <translation>Notiz, wenn gewünscht</translation>
    </message>
    <message>
        <source>Throttle</source>
        <translation>Gas</translation>
    </message>
    <message>
        <source>to</source>
        <comment>between two throttles</comment>
        <translation>bis</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::GuideVerdict</name>
    <message>
        <source>No answer for this craft</source>
        <translation>Kein Ergebnis für diesen Kopter</translation>
    </message>
    <message>
        <source>It hangs level: let go, the bay stays where it is drawn.</source>
        <translation>Sie hängt waagerecht: Losgelassen bleibt die Gondel, wo sie gezeichnet ist.</translation>
    </message>
    <message>
        <source>%1 (One of %2 warnings.)</source>
        <translation>%1 (Eine von %2 Warnungen.)</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::HangPane</name>
    <message>
        <source>What the ruler is read to</source>
        <translation>Ablesegenauigkeit des Lineals</translation>
    </message>
    <message>
        <source>What the scale shows to</source>
        <translation>Anzeigegenauigkeit der Waage</translation>
    </message>
    <message>
        <source>Hang test</source>
        <translation>Hängeversuch</translation>
    </message>
    <message>
        <source>Put two marks on a piece of the tube, hang it up, and measure between the marks: first with nothing on it, then with one mass after the other. One mass will do, two or three show whether they agree.</source>
        <translation>Zwei Striche auf ein Stück Schlauch zeichnen, es aufhängen und zwischen den Strichen messen: erst ohne Masse, dann mit einer nach der anderen. Eine Masse genügt, zwei oder drei zeigen, ob sie übereinstimmen.</translation>
    </message>
    <message>
        <source>Mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>Between the marks without it</source>
        <translation>Zwischen den Strichen ohne sie</translation>
    </message>
    <message>
        <source>and with it</source>
        <translation>und mit ihr</translation>
    </message>
    <message>
        <source>Mass %1 of the hang test</source>
        <translation>Masse %1 des Hängeversuchs</translation>
    </message>
    <message>
        <source>Length without mass %1</source>
        <translation>Länge ohne Masse %1</translation>
    </message>
    <message>
        <source>Length with mass %1</source>
        <translation>Länge mit Masse %1</translation>
    </message>
    <message>
        <source>Ruler read to</source>
        <translation>Lineal genau auf</translation>
    </message>
    <message>
        <source>scale shows to</source>
        <translation>Waage genau auf</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::HelpWindow</name>
    <message>
        <source>Help — Stillbay</source>
        <translation>Hilfe — Stillbay</translation>
    </message>
    <message>
        <source>Pages of the help</source>
        <translation>Seiten der Hilfe</translation>
    </message>
    <message>
        <source>Choose a page to read.</source>
        <translation>Eine Seite zum Lesen wählen.</translation>
    </message>
    <message>
        <source>Text of the page</source>
        <translation>Text der Seite</translation>
    </message>
    <message>
        <source>%1 is not part of this help</source>
        <translation>%1 gehört nicht zu dieser Hilfe</translation>
    </message>
    <message>
        <source>Search in this page</source>
        <translation>Auf dieser Seite suchen</translation>
    </message>
    <message>
        <source>Enter finds the next place, Shift+F3 the one before.</source>
        <translation>Eingabe findet die nächste Stelle, Umschalt+F3 die vorige.</translation>
    </message>
    <message>
        <source>&amp;Next</source>
        <translation>&amp;Nächste</translation>
    </message>
    <message>
        <source>Goes to the next place that has these words (F3).</source>
        <translation>Geht zur nächsten Stelle mit diesen Wörtern (F3).</translation>
    </message>
    <message>
        <source>&amp;Previous</source>
        <translation>&amp;Vorige</translation>
    </message>
    <message>
        <source>Goes to the place before that has these words (Shift+F3).</source>
        <translation>Geht zur vorigen Stelle mit diesen Wörtern (Umschalt+F3).</translation>
    </message>
    <message>
        <source>Outcome of the search</source>
        <translation>Ergebnis der Suche</translation>
    </message>
    <message>
        <source>Not on this page</source>
        <translation>Nicht auf dieser Seite</translation>
    </message>
    <message>
        <source>From the other end of the page</source>
        <translation>Vom anderen Ende der Seite</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::HelperDialog</name>
    <message>
        <source>Outcome</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>&amp;Use it</source>
        <translation>Über&amp;nehmen</translation>
    </message>
    <message>
        <source>Writes the outcome into the craft, one step to undo.</source>
        <translation>Schreibt das Ergebnis in den Kopter; in einem Schritt rückgängig zu machen.</translation>
    </message>
    <message>
        <source>Allowed: %1 to %2 %3</source>
        <translation>Erlaubt: %1 bis %2 %3</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::MainWindow</name>
    <message>
        <source>Notice</source>
        <translation>Meldung</translation>
    </message>
    <message>
        <source>Saved %1</source>
        <translation>Gespeichert: %1</translation>
    </message>
    <message>
        <source>Computing…</source>
        <translation>Rechnet…</translation>
    </message>
    <message>
        <source>Unsaved work cannot be kept safe against a crash</source>
        <translation>Nicht gespeicherte Arbeit lässt sich nicht gegen einen Absturz sichern</translation>
    </message>
    <message>
        <source>%1. Save the craft often.</source>
        <translation>%1. Den Kopter oft speichern.</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederholen</translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Datei</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>Be&amp;enden</translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation>&amp;Bearbeiten</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ansicht</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>&amp;Hilfe</translation>
    </message>
    <message>
        <source>Main toolbar</source>
        <translation>Hauptleiste</translation>
    </message>
    <message>
        <source>&amp;Full screen</source>
        <translation>&amp;Vollbild</translation>
    </message>
    <message>
        <source>&amp;Reset layout</source>
        <translation>Anordnung &amp;zurücksetzen</translation>
    </message>
    <message>
        <source>&amp;Help pages</source>
        <translation>Hilfe&amp;seiten</translation>
    </message>
    <message>
        <source>&amp;Keyboard shortcuts</source>
        <translation>&amp;Tastenkürzel</translation>
    </message>
    <message>
        <source>&amp;About Stillbay</source>
        <translation>&amp;Über Stillbay</translation>
    </message>
    <message>
        <source>Tuning</source>
        <translation>Abstimmen</translation>
    </message>
    <message>
        <source>Campbell diagram</source>
        <translation>Campbell-Diagramm</translation>
    </message>
    <message>
        <source>Bay</source>
        <translation>Gondel</translation>
    </message>
    <message>
        <source>Unsaved work</source>
        <translation>Nicht gespeicherte Arbeit</translation>
    </message>
    <message>
        <source>File on disk</source>
        <translation>Datei auf der Platte</translation>
    </message>
    <message>
        <source>State of the numbers</source>
        <translation>Stand der Zahlen</translation>
    </message>
    <message>
        <source>No craft open</source>
        <translation>Kein Kopter offen</translation>
    </message>
    <message>
        <source>%1[*] — Stillbay</source>
        <translation>%1[*] — Stillbay</translation>
    </message>
    <message>
        <source>Stillbay</source>
        <translation>Stillbay</translation>
    </message>
    <message>
        <source>Up to date</source>
        <translation>Aktuell</translation>
    </message>
    <message>
        <source>No answer for this craft</source>
        <translation>Kein Ergebnis für diesen Kopter</translation>
    </message>
    <message>
        <source>About Stillbay</source>
        <translation>Über Stillbay</translation>
    </message>
    <message>
        <source>&lt;p&gt;&lt;b&gt;Stillbay %1&lt;/b&gt;&lt;/p&gt;&lt;p&gt;Tunes the tubes a camera bay hangs on.&lt;/p&gt;&lt;p&gt;Free software under the MIT licence. Based in part on the work of the Qwt project (http://qwt.sf.net).&lt;/p&gt;</source>
        <translation>&lt;p&gt;&lt;b&gt;Stillbay %1&lt;/b&gt;&lt;/p&gt;&lt;p&gt;Stimmt die Schläuche ab, an denen eine Kameragondel hängt.&lt;/p&gt;&lt;p&gt;Freie Software unter der MIT-Lizenz. Based in part on the work of the Qwt project (http://qwt.sf.net).&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Safety against a crash</source>
        <translation>Sicherung gegen einen Absturz</translation>
    </message>
    <message>
        <source>Compare</source>
        <translation>Vergleichen</translation>
    </message>
    <message>
        <source>Recordings</source>
        <translation>Aufzeichnungen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::MapChart</name>
    <message>
        <source>Wobble over both design variables</source>
        <translation>Wackeln über beiden Entwurfsgrößen</translation>
    </message>
    <message>
        <source>Why parts of the map are hatched</source>
        <translation>Warum Teile der Karte schraffiert sind</translation>
    </message>
    <message>
        <source>faint %1 px</source>
        <translation>schwach %1&#xa0;px</translation>
    </message>
    <message>
        <source>bad %1 px</source>
        <translation>stark %1&#xa0;px</translation>
    </message>
    <message>
        <source>Not computed yet.</source>
        <translation>Noch nicht berechnet.</translation>
    </message>
    <message>
        <source>%1 (differs in more than this map sets)</source>
        <translation>%1 (unterscheidet sich in mehr, als diese Karte verstellt)</translation>
    </message>
    <message>
        <source>Worst at the full pack (px)</source>
        <translation>Größtes bei vollem Akku (px)</translation>
    </message>
    <message>
        <source>Worst at the empty pack (px)</source>
        <translation>Größtes bei leerem Akku (px)</translation>
    </message>
    <message>
        <source>Mean (px)</source>
        <translation>Mittel (px)</translation>
    </message>
    <message>
        <source>present tune</source>
        <translation>jetzige Abstimmung</translation>
    </message>
    <message>
        <source>best: %1 px</source>
        <translation>Bestes: %1&#xa0;px</translation>
    </message>
    <message>
        <source>Wobble (px)</source>
        <translation>Wackeln (px)</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::MapControls</name>
    <message>
        <source>What the map shows</source>
        <translation>Was die Karte zeigt</translation>
    </message>
    <message>
        <source>The findings speak of the full pack; a search lowers the larger of both.</source>
        <translation>Die Befunde gelten für den vollen Akku; eine Suche senkt das größere von beiden.</translation>
    </message>
    <message>
        <source>Worst, full to empty pack</source>
        <translation>Größtes, Akku voll bis leer</translation>
    </message>
    <message>
        <source>Worst at the full pack</source>
        <translation>Größtes bei vollem Akku</translation>
    </message>
    <message>
        <source>Mean of both packs</source>
        <translation>Mittel über voll und leer</translation>
    </message>
    <message>
        <source>S&amp;hows:</source>
        <translation>&amp;Zeigt:</translation>
    </message>
    <message>
        <source>A&amp;cross:</source>
        <translation>&amp;Waagerecht:</translation>
    </message>
    <message>
        <source>&amp;Upwards:</source>
        <translation>&amp;Senkrecht:</translation>
    </message>
    <message>
        <source>to</source>
        <translation>bis</translation>
    </message>
    <message>
        <source>What runs across the map</source>
        <translation>Was die Karte waagerecht aufträgt</translation>
    </message>
    <message>
        <source>Smallest value across the map</source>
        <translation>Kleinster Wert waagerecht</translation>
    </message>
    <message>
        <source>Largest value across the map</source>
        <translation>Größter Wert waagerecht</translation>
    </message>
    <message>
        <source>What runs up the map</source>
        <translation>Was die Karte senkrecht aufträgt</translation>
    </message>
    <message>
        <source>Smallest value up the map</source>
        <translation>Kleinster Wert senkrecht</translation>
    </message>
    <message>
        <source>Largest value up the map</source>
        <translation>Größter Wert senkrecht</translation>
    </message>
    <message>
        <source>Keep it &amp;level</source>
        <translation>Waagerecht ha&amp;lten</translation>
    </message>
    <message>
        <source>Gives every tune the elevations, and small differences of stretch, with which the bay rests where it is drawn.</source>
        <translation>Gibt jeder Abstimmung die Neigungen und kleinen Unterschiede der Dehnung, mit denen die Gondel dort ruht, wo sie gezeichnet ist.</translation>
    </message>
    <message>
        <source>The craft is drilled: its holes decide stretch, elevation and where the tubes are.</source>
        <translation>Der Kopter ist gebohrt: Seine Bohrungen bestimmen Dehnung, Neigung und wo die Schläuche sitzen.</translation>
    </message>
    <message>
        <source>Map of %1</source>
        <translation>Karte von %1</translation>
    </message>
    <message>
        <source>Which tube: how long, stretched how far.</source>
        <translation>Welcher Schlauch: wie lang, wie stark gedehnt.</translation>
    </message>
    <message>
        <source>Where the tubes hold the bay: how high, and pointing which way.</source>
        <translation>Wo die Schläuche die Gondel halten: wie hoch und in welche Richtung.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::MapPage</name>
    <message>
        <source>&amp;Find a tune…</source>
        <translation>Abstimmung &amp;finden…</translation>
    </message>
    <message>
        <source>With which tube, length and stretch the film wobbles least (%1)</source>
        <translation>Mit welchem Schlauch, welcher Länge und Dehnung der Film am wenigsten wackelt (%1)</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::MapPreview</name>
    <message>
        <source>The tune that is pointed at</source>
        <translation>Die Abstimmung, auf die gezeigt wird</translation>
    </message>
    <message>
        <source>Its wobble over the throttle; the lines are the faint and the bad limit.</source>
        <translation>Ihr Wackeln über den Gasbereich; die Linien sind die Grenzen zu schwach und stark.</translation>
    </message>
    <message>
        <source>Point at a place to see how it would fly.</source>
        <translation>Auf eine Stelle zeigen, um zu sehen, wie sie flöge.</translation>
    </message>
    <message>
        <source>Looking…</source>
        <translation>Sucht…</translation>
    </message>
    <message>
        <source>%1: no answer</source>
        <translation>%1: kein Ergebnis</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>%1 with a full pack, %2 with an empty one</source>
        <translation>%1 mit vollem, %2 mit leerem Akku</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::MapView</name>
    <message>
        <source>&amp;Take the best here</source>
        <translation>Das Beste hier &amp;nehmen</translation>
    </message>
    <message>
        <source>wobble of every tune; click to take one, or arrow keys and Enter</source>
        <translation>Wackeln jeder Abstimmung; ein Klick nimmt sie, oder Pfeiltasten und Eingabe</translation>
    </message>
    <message>
        <source>Gives the craft the values at the star; one step to undo.</source>
        <translation>Gibt dem Kopter die Werte beim Stern; in einem Schritt rückgängig zu machen.</translation>
    </message>
    <message>
        <source>State of the map</source>
        <translation>Zustand der Karte</translation>
    </message>
    <message>
        <source>Progress of the map</source>
        <translation>Fortschritt der Karte</translation>
    </message>
    <message>
        <source>No map for this craft</source>
        <translation>Keine Karte für diesen Kopter</translation>
    </message>
    <message>
        <source>Looking…</source>
        <translation>Sucht…</translation>
    </message>
    <message>
        <source>Nothing here holds</source>
        <translation>Hier ist nichts machbar</translation>
    </message>
    <message>
        <source>The present tune: %1 px.</source>
        <translation>Die jetzige Abstimmung: %1&#xa0;px.</translation>
    </message>
    <message>
        <source>The present tune is %1.</source>
        <translation>Die jetzige Abstimmung ist %1.</translation>
    </message>
    <message>
        <source>Best here: %1 px</source>
        <translation>Bestes hier: %1&#xa0;px</translation>
    </message>
    <message>
        <source>At %1, on the edge of the map: look further. %2</source>
        <translation>Bei %1, am Rand der Karte: Bereich erweitern. %2</translation>
    </message>
    <message>
        <source>At %1. %2</source>
        <translation>Bei %1. %2</translation>
    </message>
    <message>
        <source>Computing…</source>
        <translation>Rechnet…</translation>
    </message>
    <message>
        <source>Take %1</source>
        <translation>%1 nehmen</translation>
    </message>
    <message>
        <source>Best here: %1 px, but %2</source>
        <translation>Bestes hier: %1&#xa0;px, aber %2</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Settings of the map</source>
        <translation>Einstellungen der Karte</translation>
    </message>
    <message>
        <source>Shows beside the map what it sets, and the best on it, where there is room.</source>
        <translation>Zeigt neben der Karte, was sie verstellt, und das Beste auf ihr, wo Platz ist.</translation>
    </message>
    <message>
        <source>At %1, and a cut a little off does not hold. %2</source>
        <translation>Bei %1, aber bei etwas ungenauem Zuschnitt nicht mehr machbar. %2</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::MatchPane</name>
    <message>
        <source>Which mode is which:</source>
        <translation>Welche Eigenschwingung ist welche:</translation>
    </message>
    <message>
        <source>Which mode of the bay number %1 found is</source>
        <translation>Welche Eigenschwingung der Gondel die gefundene Nr.&#xa0;%1 ist</translation>
    </message>
    <message>
        <source>Which of the bay&apos;s modes this is. Each is one of them once.</source>
        <translation>Welche Eigenschwingung der Gondel das ist. Jede kommt nur einmal vor.</translation>
    </message>
    <message>
        <source>%1 Hz is</source>
        <translation>%1&#xa0;Hz ist</translation>
    </message>
    <message>
        <source>no mode of the bay</source>
        <translation>keine Eigenschwingung der Gondel</translation>
    </message>
    <message>
        <source>the one at %1 Hz</source>
        <translation>die bei %1&#xa0;Hz</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::MeasuredChart</name>
    <message>
        <source>Predicted</source>
        <translation>Vorhergesagt</translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Gemessen</translation>
    </message>
    <message>
        <source>Excitation bands</source>
        <translation>Anregungsbänder</translation>
    </message>
    <message>
        <source>Nothing is shown yet.</source>
        <translation>Noch wird nichts gezeigt.</translation>
    </message>
    <message>
        <source>excitation in cruise:</source>
        <translation>Anregung im Reiseflug:</translation>
    </message>
    <message>
        <source>Strongest: %1</source>
        <translation>Stärkste: %1</translation>
    </message>
    <message>
        <source>%1: %2 at %3</source>
        <translation>%1: %2 bei %3</translation>
    </message>
    <message>
        <source>Legend of %1</source>
        <translation>Legende von %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::MessageBar</name>
    <message>
        <source>%1: message</source>
        <translation>%1: Text</translation>
    </message>
    <message>
        <source>%1: details</source>
        <translation>%1: Einzelheiten</translation>
    </message>
    <message>
        <source>Dismiss</source>
        <translation>Ausblenden</translation>
    </message>
    <message>
        <source>%1: dismiss</source>
        <translation>%1: ausblenden</translation>
    </message>
    <message>
        <source>Hides this message.</source>
        <translation>Blendet diese Meldung aus.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::NewCraftDesk</name>
    <message>
        <source>&amp;New craft…</source>
        <translation>&amp;Neuer Kopter…</translation>
    </message>
    <message>
        <source>Describe your own craft on five short pages (%1)</source>
        <translation>Den eigenen Kopter auf fünf kurzen Seiten beschreiben (%1)</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::NewCraftGuide</name>
    <message>
        <source>Bac&amp;k</source>
        <translation>Zurüc&amp;k</translation>
    </message>
    <message>
        <source>&amp;Next</source>
        <translation>&amp;Nächste</translation>
    </message>
    <message>
        <source>&amp;Create</source>
        <translation>A&amp;nlegen</translation>
    </message>
    <message>
        <source>New craft</source>
        <translation>Neuer Kopter</translation>
    </message>
    <message>
        <source>%1 of %2: %3</source>
        <translation>%1 von %2: %3</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>%1 of %2 answers are yours, the rest is typical.</source>
        <translation>%1 von %2 Angaben sind die eigenen, der Rest ist typisch.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::NumberBox</name>
    <message>
        <source>“%1” is not a number</source>
        <translation>„%1“ ist keine Zahl</translation>
    </message>
    <message>
        <source>%1 is not a whole number</source>
        <translation>%1 ist keine ganze Zahl</translation>
    </message>
    <message>
        <source>%1 is outside %2 to %3</source>
        <translation>%1 liegt außerhalb von %2 bis %3</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::NumberQuestion</name>
    <message>
        <source>Allowed: %1 to %2 %3</source>
        <translation>Erlaubt: %1 bis %2 %3</translation>
    </message>
    <message>
        <source>Empty it to return to what is typical.</source>
        <translation>Geleert zeigt es wieder, was typisch ist.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::PartButtons</name>
    <message>
        <source>Add from preset…</source>
        <translation>Aus Vorlage…</translation>
    </message>
    <message>
        <source>&lt;p&gt;A battery or a camera by its kind, with typical mass and size.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Ein Akku oder eine Kamera nach ihrer Art, mit typischer Masse und Größe.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Battery or camera</source>
        <translation>Akku oder Kamera</translation>
    </message>
    <message>
        <source>add a part from a preset</source>
        <translation>Teil aus einer Vorlage hinzufügen</translation>
    </message>
    <message>
        <source>Add a plate…</source>
        <translation>Platte…</translation>
    </message>
    <message>
        <source>&lt;p&gt;Works out its mass from outline, thickness and material.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Rechnet ihre Masse aus Umriss, Dicke und Material aus.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Bay: %1</source>
        <translation>Gondel: %1</translation>
    </message>
    <message>
        <source>Airframe: %1</source>
        <translation>Rahmen: %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::PartRow</name>
    <message>
        <source>All of it</source>
        <translation>Alles</translation>
    </message>
    <message>
        <source>Beginning of the part</source>
        <translation>Anfang des Teils</translation>
    </message>
    <message>
        <source>End of the part</source>
        <translation>Ende des Teils</translation>
    </message>
    <message>
        <source>Use all of the recording</source>
        <translation>Die ganze Aufzeichnung benutzen</translation>
    </message>
    <message>
        <source>Uses the recording from its beginning to its end.</source>
        <translation>Benutzt die Aufzeichnung von Anfang bis Ende.</translation>
    </message>
    <message>
        <source>Used from</source>
        <translation>Benutzt von</translation>
    </message>
    <message>
        <source>to</source>
        <comment>end of the part of a recording</comment>
        <translation>bis</translation>
    </message>
    <message>
        <source>Beginning of the film&apos;s part</source>
        <translation>Anfang des Filmteils</translation>
    </message>
    <message>
        <source>End of the film&apos;s part</source>
        <translation>Ende des Filmteils</translation>
    </message>
    <message>
        <source>In seconds since the film&apos;s first frame. At most a minute of a film is read at once.</source>
        <translation>In Sekunden seit dem ersten Bild des Films. Von einem Film wird höchstens eine Minute auf einmal gelesen.</translation>
    </message>
    <message>
        <source>In seconds since the beginning of the recording. In the trace a part is drawn with the left button, or moved by its ends; a double click takes all.</source>
        <translation>In Sekunden seit dem Anfang der Aufzeichnung. Im Verlauf wird ein Teil mit der linken Taste aufgezogen oder an seinen Enden verschoben; ein Doppelklick nimmt alles.</translation>
    </message>
    <message>
        <source>Use all of the film</source>
        <translation>Den ganzen Film benutzen</translation>
    </message>
    <message>
        <source>Uses the film from its first frame.</source>
        <translation>Benutzt den Film von seinem ersten Bild an.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::PlateDialog</name>
    <message>
        <source>Add a plate</source>
        <translation>Platte hinzufügen</translation>
    </message>
    <message>
        <source>The outline, the thickness and the material tell what a plate weighs.</source>
        <translation>Umriss, Dicke und Material sagen, was eine Platte wiegt.</translation>
    </message>
    <message>
        <source>plate</source>
        <translation>Platte</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>What you call this plate.</source>
        <translation>Wie diese Platte heißt.</translation>
    </message>
    <message>
        <source>Material</source>
        <translation>Material</translation>
    </message>
    <message>
        <source>Its density is a typical one.</source>
        <translation>Seine Dichte ist eine typische.</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>Of the outline, fore and aft.</source>
        <translation>Des Umrisses, längs.</translation>
    </message>
    <message>
        <source>Width</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>Of the outline, across.</source>
        <translation>Des Umrisses, quer.</translation>
    </message>
    <message>
        <source>Thickness</source>
        <translation>Dicke</translation>
    </message>
    <message>
        <source>By calliper.</source>
        <translation>Mit dem Messschieber.</translation>
    </message>
    <message>
        <source>Cut out</source>
        <translation>Ausgeschnitten</translation>
    </message>
    <message>
        <source>%</source>
        <translation>%</translation>
    </message>
    <message>
        <source>How much of the outline holes, slots and rounded corners take.</source>
        <translation>Wie viel des Umrisses Löcher, Schlitze und runde Ecken nehmen.</translation>
    </message>
    <message>
        <source>The plate starts in the middle of the parts that are there; move it afterwards. Its mass counts as estimated until you type the one from the scale.</source>
        <translation>Die Platte beginnt in der Mitte der vorhandenen Teile; danach verschieben. Ihre Masse gilt als geschätzt, bis die von der Waage eingetippt ist.</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Mass: %1 g.</source>
        <translation>Masse: %1&#xa0;g.</translation>
    </message>
    <message>
        <source>Density of %1: %2 kg/m³. From: %3.</source>
        <translation>Dichte, %1: %2&#xa0;kg/m³. Quelle: %3.</translation>
    </message>
    <message>
        <source>add a plate</source>
        <translation>Platte hinzufügen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::PresetButtons</name>
    <message>
        <source>Choose a preset…</source>
        <translation>Vorlage wählen…</translation>
    </message>
    <message>
        <source>&lt;p&gt;Fills this section with typical numbers, for a start; each says where it is from, and gives way to your own.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Füllt diesen Abschnitt für den Anfang mit typischen Zahlen; jede sagt, woher sie ist, und weicht der eigenen.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Keep as preset…</source>
        <translation>Als Vorlage merken…</translation>
    </message>
    <message>
        <source>&lt;p&gt;Keeps this section&apos;s numbers under a name, for this and other crafts.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Merkt die Zahlen dieses Abschnitts unter einem Namen, für diesen und andere Kopter.&lt;/p&gt;</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::PresetDialog</name>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>then</source>
        <translation>dann</translation>
    </message>
    <message>
        <source>differ by</source>
        <translation>streut um</translation>
    </message>
    <message>
        <source>Enter takes the preset that is chosen.</source>
        <translation>Die Eingabetaste nimmt die gewählte Vorlage.</translation>
    </message>
    <message>
        <source>What the preset fills in</source>
        <translation>Was die Vorlage ausfüllt</translation>
    </message>
    <message>
        <source>Where the preset is from</source>
        <translation>Woher die Vorlage ist</translation>
    </message>
    <message>
        <source>&amp;Use it</source>
        <translation>Über&amp;nehmen</translation>
    </message>
    <message>
        <source>Writes these numbers into the craft, one step to undo.</source>
        <translation>Schreibt diese Zahlen in den Kopter, in einem Schritt rückgängig zu machen.</translation>
    </message>
    <message>
        <source>&amp;Remove from the list</source>
        <translation>Aus der Liste &amp;entfernen</translation>
    </message>
    <message>
        <source>Forgets a preset that you kept; the craft stays as it is.</source>
        <translation>Vergisst eine gemerkte Vorlage; der Kopter bleibt, wie er ist.</translation>
    </message>
    <message>
        <source>From: %1.</source>
        <translation>Quelle: %1.</translation>
    </message>
    <message>
        <source>%1

From: %2.</source>
        <translation>%1

Quelle: %2.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ProblemLabel</name>
    <message>
        <source>Not taken: %1.</source>
        <translation>Nicht übernommen: %1.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::Question</name>
    <message>
        <source>yours</source>
        <translation>eigen</translation>
    </message>
    <message>
        <source>typical</source>
        <translation>typisch</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ReadingStrip</name>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Progress of the reading</source>
        <translation>Fortschritt des Lesens</translation>
    </message>
    <message>
        <source>Stop reading, or read again</source>
        <translation>Lesen anhalten oder neu beginnen</translation>
    </message>
    <message>
        <source>Reading was stopped.</source>
        <translation>Das Lesen wurde angehalten.</translation>
    </message>
    <message>
        <source>Read again</source>
        <translation>Neu lesen</translation>
    </message>
    <message>
        <source>Progress of the film&apos;s reading</source>
        <translation>Fortschritt beim Lesen des Films</translation>
    </message>
    <message>
        <source>Stop reading the film, or read it again</source>
        <translation>Lesen des Films anhalten oder neu beginnen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::RecentList</name>
    <message>
        <source>Opened last:</source>
        <translation>Zuletzt geöffnet:</translation>
    </message>
    <message>
        <source>Open %1</source>
        <translation>%1 öffnen</translation>
    </message>
    <message>
        <source>missing, was in %1</source>
        <translation>fehlt, war in %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::RecentMenu</name>
    <message>
        <source>Open &amp;recent</source>
        <translation>&amp;Zuletzt geöffnet</translation>
    </message>
    <message>
        <source>%1 (missing)</source>
        <translation>%1 (fehlt)</translation>
    </message>
    <message>
        <source>&amp;Clear this list</source>
        <translation>&amp;Liste leeren</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::RecordingEdits</name>
    <message>
        <source>change what a recording is taken for</source>
        <translation>Art einer Aufzeichnung ändern</translation>
    </message>
    <message>
        <source>change how a recording is read</source>
        <translation>Lesart einer Aufzeichnung ändern</translation>
    </message>
    <message>
        <source>say where the sensor sat</source>
        <translation>Ort des Sensors angeben</translation>
    </message>
    <message>
        <source>say at which throttle was filmed</source>
        <translation>sagen, bei welchem Gas gefilmt wurde</translation>
    </message>
    <message>
        <source>Add recordings</source>
        <translation>Aufzeichnungen hinzufügen</translation>
    </message>
    <message>
        <source>Where is %1?</source>
        <translation>Wo ist %1?</translation>
    </message>
    <message>
        <source>name the recording&apos;s new place</source>
        <translation>neuen Ort der Aufzeichnung nennen</translation>
    </message>
    <message>
        <source>remove a recording</source>
        <translation>Aufzeichnung entfernen</translation>
    </message>
    <message>
        <source>choose a part of a recording</source>
        <translation>Teil einer Aufzeichnung wählen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::RecordingList</name>
    <message>
        <source>Add a recording…</source>
        <translation>Aufzeichnung hinzufügen…</translation>
    </message>
    <message>
        <source>Remove from the list</source>
        <translation>Aus der Liste nehmen</translation>
    </message>
    <message>
        <source>Taken for:</source>
        <translation>Gilt als:</translation>
    </message>
    <message>
        <source>Recordings of this craft</source>
        <translation>Aufzeichnungen dieses Kopters</translation>
    </message>
    <message>
        <source>Takes the chosen name off the list; the file stays.</source>
        <translation>Nimmt den gewählten Namen aus der Liste; die Datei bleibt.</translation>
    </message>
    <message>
        <source>What the recording is taken for</source>
        <translation>Als was die Aufzeichnung gilt</translation>
    </message>
    <message>
        <source>%1
missing</source>
        <translation>%1
fehlt</translation>
    </message>
    <message>
        <source>%1
%2</source>
        <comment>file and what it is taken for</comment>
        <translation>%1
%2</translation>
    </message>
    <message>
        <source>There is no such file: %1</source>
        <translation>Diese Datei gibt es nicht: %1</translation>
    </message>
    <message>
        <source>Hang test
needs no recording</source>
        <translation>Hängeversuch
ohne Aufzeichnung</translation>
    </message>
    <message>
        <source>Young&apos;s modulus of the tube from masses hung on a piece of it.</source>
        <translation>Elastizitätsmodul des Schlauchs aus Massen, die an einem Stück davon hängen.</translation>
    </message>
    <message>
        <source>Flight notes
need no recording</source>
        <translation>Flugnotizen
ohne Aufzeichnung</translation>
    </message>
    <message>
        <source>What was seen in films at which throttle.</source>
        <translation>Was in Filmen bei welchem Gas zu sehen war.</translation>
    </message>
    <message>
        <source>Names a table of numbers (csv, txt, tsv), a sound (wav, flac, ogg) or a film (mp4, mov, …) beside the craft; the file stays where it is. It can be dropped onto the window, too.</source>
        <translation>Führt eine Zahlentabelle (csv, txt, tsv), einen Ton (wav, flac, ogg) oder einen Film (mp4, mov, …) beim Kopter auf; die Datei bleibt, wo sie ist. Sie lässt sich auch auf das Fenster ziehen.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::RecordingPage</name>
    <message>
        <source>How it is read</source>
        <translation>Wie sie gelesen wird</translation>
    </message>
    <message>
        <source>What the trace shows</source>
        <translation>Was der Verlauf zeigt</translation>
    </message>
    <message>
        <source>What of the recording is drawn.</source>
        <translation>Was von der Aufzeichnung gezeichnet wird.</translation>
    </message>
    <message>
        <source>draw the part that is used with the left button</source>
        <translation>den benutzten Teil mit der linken Taste aufziehen</translation>
    </message>
    <message>
        <source>Reading…</source>
        <translation>Liest…</translation>
    </message>
    <message>
        <source>%1 samples at %2 Hz, %3 s</source>
        <translation>%1 Werte mit %2&#xa0;Hz, %3&#xa0;s</translation>
    </message>
    <message>
        <source> (and %1 more)</source>
        <translation> (und %1 weitere)</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::RecordingsView</name>
    <message>
        <source>Recordings</source>
        <translation>Aufzeichnungen</translation>
    </message>
    <message>
        <source>change the flight notes</source>
        <translation>Flugnotizen ändern</translation>
    </message>
    <message>
        <source>the samples cannot be written to the program&apos;s own folder</source>
        <translation>die Beispiele lassen sich nicht in den Ordner des Programms schreiben</translation>
    </message>
    <message>
        <source>%1 is missing</source>
        <translation>%1 fehlt</translation>
    </message>
    <message>
        <source>Find it…</source>
        <translation>Suchen…</translation>
    </message>
    <message>
        <source>Names the place where the recording is now.</source>
        <translation>Nennt den Ort, an dem die Aufzeichnung jetzt ist.</translation>
    </message>
    <message>
        <source>%1 cannot be read</source>
        <translation>%1 lässt sich nicht lesen</translation>
    </message>
    <message>
        <source>%1. Nothing else has changed.</source>
        <translation>%1. Sonst hat sich nichts geändert.</translation>
    </message>
    <message>
        <source>accept a measurement</source>
        <translation>Messung übernehmen</translation>
    </message>
    <message>
        <source>What it says is being worked out…</source>
        <translation>Was sie sagt, wird berechnet …</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::Recovery</name>
    <message>
        <source>It was never saved to a file.</source>
        <translation>Der Kopter wurde nie in einer Datei gespeichert.</translation>
    </message>
    <message>
        <source>Its file %1 is gone.</source>
        <translation>Seine Datei %1 gibt es nicht mehr.</translation>
    </message>
    <message>
        <source>Its file %1 has changed since.</source>
        <translation>Seine Datei %1 wurde seither geändert.</translation>
    </message>
    <message>
        <source>Its file %1 is as it was before these changes.</source>
        <translation>Seine Datei %1 ist noch so wie vor diesen Änderungen.</translation>
    </message>
    <message>
        <source>Restore</source>
        <translation>Wiederherstellen</translation>
    </message>
    <message>
        <source>Opens the craft with the changes that were not saved.</source>
        <translation>Öffnet den Kopter mit den nicht gespeicherten Änderungen.</translation>
    </message>
    <message>
        <source>Discard</source>
        <translation>Verwerfen</translation>
    </message>
    <message>
        <source>Throws the unsaved changes away; the file stays as it is.</source>
        <translation>Wirft die nicht gespeicherten Änderungen weg; die Datei bleibt, wie sie ist.</translation>
    </message>
    <message>
        <source>Show the file</source>
        <translation>Datei zeigen</translation>
    </message>
    <message>
        <source>Opens the craft as it was saved last, so that you can decide.</source>
        <translation>Öffnet den Kopter, wie er zuletzt gespeichert wurde, zum Ansehen vor der Entscheidung.</translation>
    </message>
    <message>
        <source>Unsaved changes to %1 were kept when the program ended unexpectedly (%2)</source>
        <translation>Nicht gespeicherte Änderungen an %1 blieben erhalten, als das Programm unerwartet endete (%2)</translation>
    </message>
    <message>
        <source>Unsaved work of an earlier run cannot be read (%1). It was kept as %2</source>
        <translation>Nicht gespeicherte Arbeit eines früheren Laufs ist nicht lesbar (%1). Sie wurde aufgehoben als %2</translation>
    </message>
    <message>
        <source>Its file %1 cannot be read now.</source>
        <translation>Seine Datei %1 ist jetzt nicht lesbar.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ResultPart</name>
    <message>
        <source>What is shown of it</source>
        <translation>Was davon zu sehen ist</translation>
    </message>
    <message>
        <source>Working out what it shows…</source>
        <translation>Was sie zeigt, wird berechnet …</translation>
    </message>
    <message>
        <source>What the film shows</source>
        <translation>Was der Film zeigt</translation>
    </message>
    <message>
        <source>What it shows</source>
        <translation>Was sie zeigt</translation>
    </message>
    <message>
        <source>What is shown of the film</source>
        <translation>Was vom Film zu sehen ist</translation>
    </message>
    <message>
        <source>beside what the craft predicts</source>
        <translation>neben dem, was der Kopter vorhersagt</translation>
    </message>
    <message>
        <source>dashed: as the craft predicts it</source>
        <translation>gestrichelt: wie der Kopter es vorhersagt</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::RowList</name>
    <message>
        <source>Add %1</source>
        <translation>%1 hinzufügen</translation>
    </message>
    <message>
        <source>One more at the end of the list.</source>
        <translation>Noch einen Eintrag am Ende der Liste.</translation>
    </message>
    <message>
        <source>add %1</source>
        <translation>%1 hinzufügen</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Remove %1</source>
        <translation>%1 entfernen</translation>
    </message>
    <message>
        <source>remove %1</source>
        <translation>%1 entfernen</translation>
    </message>
    <message>
        <source>Move %1 up</source>
        <translation>%1 nach oben</translation>
    </message>
    <message>
        <source>Move %1 down</source>
        <translation>%1 nach unten</translation>
    </message>
    <message>
        <source>move %1 up</source>
        <translation>%1 nach oben schieben</translation>
    </message>
    <message>
        <source>move %1 down</source>
        <translation>%1 nach unten schieben</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::SaidPane</name>
    <message>
        <source>of the measurement</source>
        <translation>der Messung</translation>
    </message>
    <message>
        <source>of the speeds</source>
        <translation>der Drehzahlen</translation>
    </message>
    <message>
        <source>of the unbalance</source>
        <translation>der Unwucht</translation>
    </message>
    <message>
        <source>It corrects nothing: %1.</source>
        <translation>Sie korrigiert nichts: %1.</translation>
    </message>
    <message>
        <source>of the readout</source>
        <translation>der Auslesezeit</translation>
    </message>
    <message>
        <source>Fill in one row or more: the tube&apos;s Young&apos;s modulus follows.</source>
        <translation>Eine Zeile oder mehr ausfüllen: Daraus folgt der Elastizitätsmodul des Schlauchs.</translation>
    </message>
    <message>
        <source>No answer: %1.</source>
        <translation>Kein Ergebnis: %1.</translation>
    </message>
    <message>
        <source>So stiff is the tube by the masses hung on it.</source>
        <translation>So steif ist der Schlauch nach den Massen, die daran hingen.</translation>
    </message>
    <message>
        <source>Notes say where the prediction and what the films show differ.</source>
        <translation>Notizen zeigen, wo Vorhersage und Filme voneinander abweichen.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::Section</name>
    <message>
        <source>Section %1</source>
        <translation>Abschnitt %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::SensorPane</name>
    <message>
        <source>Sensor at (forward, left, up)</source>
        <translation>Sensor bei (vorn, links, oben)</translation>
    </message>
    <message>
        <source>Sensor, forward</source>
        <translation>Sensor, vorn</translation>
    </message>
    <message>
        <source>Sensor, left</source>
        <translation>Sensor, links</translation>
    </message>
    <message>
        <source>Sensor, up</source>
        <translation>Sensor, oben</translation>
    </message>
    <message>
        <source>Mass of the sensor</source>
        <translation>Masse des Sensors</translation>
    </message>
    <message>
        <source>With what holds it, where it is no part of the craft.</source>
        <translation>Mit seiner Halterung, wenn er kein Teil des Kopters ist.</translation>
    </message>
    <message>
        <source>Where the sensor&apos;s axes point</source>
        <translation>Wohin die Achsen des Sensors zeigen</translation>
    </message>
    <message>
        <source>x:y:z where it lies as the craft does; -y:x:z where its x points to the right and its y ahead. Empty: not known.</source>
        <translation>x:y:z, wenn er wie der Kopter liegt; -y:x:z, wenn sein x nach rechts und sein y nach vorn zeigt. Leer: nicht bekannt.</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>axes</source>
        <translation>Achsen</translation>
    </message>
    <message>
        <source>it weighs</source>
        <translation>er wiegt</translation>
    </message>
    <message>
        <source>Ticked: where the sensor sat is known, measured from the middle of the centre plate. Otherwise it is taken to sit at the camera, or, on the airframe, at that middle.</source>
        <translation>Angehakt: Der Ort des Sensors ist bekannt, gemessen von der Mitte der Mittelplatte. Sonst wird er bei der Kamera angenommen, am Rahmen in dieser Mitte.</translation>
    </message>
    <message>
        <source>Tapped arm</source>
        <translation>Angeklopfter Ausleger</translation>
    </message>
    <message>
        <source>Which of the airframe&apos;s arms was tapped.</source>
        <translation>Welcher der Ausleger des Rahmens angeklopft wurde.</translation>
    </message>
    <message>
        <source>arm %1, at %2°</source>
        <comment>number and azimuth</comment>
        <translation>Ausleger %1, bei %2°</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::SheetDesk</name>
    <message>
        <source>&amp;Build sheet…</source>
        <translation>Baub&amp;latt…</translation>
    </message>
    <message>
        <source>Cut list, holes and drilling template on paper (%1)</source>
        <translation>Zuschnittliste, Bohrungen und Bohrschablone auf Papier (%1)</translation>
    </message>
    <message>
        <source>No build sheet for this craft</source>
        <translation>Kein Baublatt für diesen Kopter</translation>
    </message>
    <message>
        <source>Build sheet</source>
        <translation>Baublatt</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::SheetDialog</name>
    <message>
        <source>Notice</source>
        <translation>Meldung</translation>
    </message>
    <message>
        <source>Previous page</source>
        <translation>Vorige Seite</translation>
    </message>
    <message>
        <source>Next page</source>
        <translation>Nächste Seite</translation>
    </message>
    <message>
        <source>Build sheet</source>
        <translation>Baublatt</translation>
    </message>
    <message>
        <source>A4</source>
        <translation>A4</translation>
    </message>
    <message>
        <source>Letter</source>
        <translation>Letter</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>The paper in your printer.</source>
        <translation>Das Papier im Drucker.</translation>
    </message>
    <message>
        <source>Build sheet preview</source>
        <translation>Vorschau des Baublatts</translation>
    </message>
    <message>
        <source>Pages of the build sheet</source>
        <translation>Seiten des Baublatts</translation>
    </message>
    <message>
        <source>Page shown</source>
        <translation>Gezeigte Seite</translation>
    </message>
    <message>
        <source>&amp;Paper</source>
        <translation>&amp;Papier</translation>
    </message>
    <message>
        <source>&amp;Save as PDF…</source>
        <translation>Als PDF &amp;speichern…</translation>
    </message>
    <message>
        <source>Writes all pages to one file.</source>
        <translation>Schreibt alle Seiten in eine Datei.</translation>
    </message>
    <message>
        <source>P&amp;rint…</source>
        <translation>&amp;Drucken…</translation>
    </message>
    <message>
        <source>Print at 100 %, or the drilling template is not true.</source>
        <translation>Mit 100&#xa0;% drucken, sonst stimmt die Bohrschablone nicht.</translation>
    </message>
    <message>
        <source>Page %1 of %2</source>
        <translation>Seite %1 von %2</translation>
    </message>
    <message>
        <source>Saved %1</source>
        <translation>Gespeichert: %1</translation>
    </message>
    <message>
        <source>Could not save %1</source>
        <translation>%1 ließ sich nicht speichern</translation>
    </message>
    <message>
        <source>Save the build sheet as</source>
        <translation>Baublatt speichern unter</translation>
    </message>
    <message>
        <source>PDF files (*.pdf)</source>
        <translation>PDF-Dateien (*.pdf)</translation>
    </message>
    <message>
        <source>Could not print</source>
        <translation>Drucken nicht möglich</translation>
    </message>
    <message>
        <source>The printer or the file takes nothing: choose another.</source>
        <translation>Der Drucker oder die Datei nimmt nichts an: anderes Ziel wählen.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::SpeedPane</name>
    <message>
        <source>Type the throttle that was held at each; three or more correct the motors.</source>
        <translation>Zu jeder Drehzahl das gehaltene Gas eintragen; ab drei werden die Motoren korrigiert.</translation>
    </message>
    <message>
        <source>Throttle at steady speed %1</source>
        <translation>Gas bei gleichmäßiger Drehzahl %1</translation>
    </message>
    <message>
        <source>The stick, in per cent of full. –: not known, not used.</source>
        <translation>Der Knüppel in Prozent von Vollgas. –: nicht bekannt, nicht benutzt.</translation>
    </message>
    <message>
        <source>%1 to %2 s: %3 rpm at</source>
        <translation>%1 bis %2&#xa0;s: %3&#xa0;U/min bei</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::SpeedsView</name>
    <message>
        <source>Across the speed chart</source>
        <translation>Waagerechte Achse des Drehzahldiagramms</translation>
    </message>
    <message>
        <source>What runs across the chart.</source>
        <translation>Was das Diagramm waagerecht aufträgt.</translation>
    </message>
    <message>
        <source>Throttle</source>
        <translation>Gas</translation>
    </message>
    <message>
        <source>Rotor speed</source>
        <translation>Rotordrehzahl</translation>
    </message>
    <message>
        <source>A&amp;cross:</source>
        <translation>&amp;Waagerecht:</translation>
    </message>
    <message>
        <source>&amp;Log axis</source>
        <translation>&amp;Log. Achse</translation>
    </message>
    <message>
        <source>Logarithmic frequency axis of the speed chart</source>
        <translation>Logarithmische Frequenzachse des Drehzahldiagramms</translation>
    </message>
    <message>
        <source>Gives low and high frequencies the same room.</source>
        <translation>Gibt tiefen und hohen Frequenzen gleich viel Platz.</translation>
    </message>
    <message>
        <source>the rotors&apos; orders against what can swing; drag the upright line</source>
        <translation>Ordnungen der Rotoren und was schwingen kann; senkrechte Linie ziehen</translation>
    </message>
    <message>
        <source>Where orders meet what can swing</source>
        <translation>Wo Ordnungen treffen, was schwingen kann</translation>
    </message>
    <message>
        <source>At the throttle looked at</source>
        <translation>Beim gewählten Gas</translation>
    </message>
    <message>
        <source>No answer for this craft</source>
        <translation>Kein Ergebnis für diesen Kopter</translation>
    </message>
    <message>
        <source>The chart shows the last craft that had one.</source>
        <translation>Das Diagramm zeigt den letzten Kopter, der ein Ergebnis hatte.</translation>
    </message>
    <message>
        <source>A ring marks where an order meets what can swing inside the cruise window.</source>
        <translation>Ein Ring markiert, wo im Reiseflugbereich eine Ordnung trifft, was schwingen kann.</translation>
    </message>
    <message>
        <source>Inside the cruise window</source>
        <translation>Im Reiseflugbereich</translation>
    </message>
    <message>
        <source>Nothing meets.</source>
        <translation>Kein Schnittpunkt.</translation>
    </message>
    <message>
        <source>Outside it</source>
        <translation>Außerhalb</translation>
    </message>
    <message>
        <source>What moves a crossing</source>
        <translation>Was einen Schnittpunkt verschiebt</translation>
    </message>
    <message>
        <source>Tubes and mounts move what the bay does; arms and motors move what the arms do; propellers and the craft&apos;s weight move the speeds.</source>
        <translation>Schläuche und Aufhängung verschieben, was die Gondel tut; Ausleger und Motoren, was die Ausleger tun; Propeller und Gewicht des Kopters die Drehzahlen.</translation>
    </message>
    <message>
        <source>Hover</source>
        <translation>Schweben</translation>
    </message>
    <message>
        <source>Lines and crossings are those of a full pack.</source>
        <translation>Linien und Schnittpunkte gelten für vollen Akku.</translation>
    </message>
    <message>
        <source>At the line: %1</source>
        <translation>An der Linie: %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::StockModel</name>
    <message>
        <source>%1 is in the tube stock already</source>
        <translation>%1 ist schon im Schlauchvorrat</translation>
    </message>
    <message>
        <source>The space bar ticks, double-click or F2 changes a number.</source>
        <translation>Die Leertaste hakt an, Doppelklick oder F2 ändert eine Zahl.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>The tube stock cannot be kept: %1.</source>
        <translation>Der Schlauchvorrat lässt sich nicht aufbewahren: %1.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::StockPanel</name>
    <message>
        <source>Removes the chosen tube from the stock (Delete).</source>
        <translation>Nimmt den gewählten Schlauch aus dem Vorrat (Entf).</translation>
    </message>
    <message>
        <source>Tube stock</source>
        <translation>Schlauchvorrat</translation>
    </message>
    <message>
        <source>Outer diameter of a new tube</source>
        <translation>Außendurchmesser eines neuen Schlauchs</translation>
    </message>
    <message>
        <source>Bore of a new tube</source>
        <translation>Innendurchmesser eines neuen Schlauchs</translation>
    </message>
    <message>
        <source>Shore A hardness of a new tube</source>
        <translation>Shore-A-Härte eines neuen Schlauchs</translation>
    </message>
    <message>
        <source>Adds a tube of these measures to the stock.</source>
        <translation>Nimmt einen Schlauch mit diesen Maßen in den Vorrat auf.</translation>
    </message>
    <message>
        <source>Adds the tube that the craft has now to the stock.</source>
        <translation>Nimmt den jetzigen Schlauch des Kopters in den Vorrat auf.</translation>
    </message>
    <message>
        <source>A part of the tube stock could not be read. It is still in the settings, under %1.</source>
        <translation>Ein Teil des Schlauchvorrats war nicht lesbar. Er steht noch in den Einstellungen, unter %1.</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
    <message>
        <source>Add the present one</source>
        <translation>Jetzigen hinzufügen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::SuggestionsPanel</name>
    <message>
        <source>Progress of trying the steps</source>
        <translation>Fortschritt beim Probieren der Schritte</translation>
    </message>
    <message>
        <source>Suggested steps</source>
        <translation>Vorgeschlagene Schritte</translation>
    </message>
    <message>
        <source>Tried as soon as a craft is open.</source>
        <translation>Wird probiert, sobald ein Kopter offen ist.</translation>
    </message>
    <message>
        <source>The craft has no answer, so there is nothing to compare a step with.</source>
        <translation>Der Kopter hat kein Ergebnis, mit dem sich ein Schritt vergleichen ließe.</translation>
    </message>
    <message>
        <source>No single practical step lowers the wobble in cruise.</source>
        <translation>Kein einzelner praktischer Schritt senkt das Wackeln im Reiseflug.</translation>
    </message>
    <message>
        <source>take the step “%1”</source>
        <translation>Schritt „%1“ übernehmen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TableDialog</name>
    <message>
        <source>Numbers of %1</source>
        <translation>Zahlen: %1</translation>
    </message>
    <message>
        <source>&amp;Copy all</source>
        <translation>Alles &amp;kopieren</translation>
    </message>
    <message>
        <source>Copies the whole table, to be pasted into a spreadsheet.</source>
        <translation>Kopiert die ganze Tabelle zum Einfügen in eine Tabellenkalkulation.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TableModel</name>
    <message>
        <source>none</source>
        <translation>keiner</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TextRow</name>
    <message>
        <source>change %1</source>
        <translation>%1 ändern</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ThrottleChart</name>
    <message>
        <source>Across the throttle</source>
        <translation>Über den Gasbereich</translation>
    </message>
    <message>
        <source>clean</source>
        <translation>sauber</translation>
    </message>
    <message>
        <source>faint</source>
        <translation>schwach</translation>
    </message>
    <message>
        <source>bad</source>
        <translation>stark</translation>
    </message>
    <message>
        <source>worst-case phase</source>
        <translation>ungünstigste Phasenlage</translation>
    </message>
    <message>
        <source>wobble in the film</source>
        <translation>Wackeln im Film</translation>
    </message>
    <message>
        <source>Hover</source>
        <translation>Schweben</translation>
    </message>
    <message>
        <source>Cruise</source>
        <translation>Reiseflug</translation>
    </message>
    <message>
        <source>Legend of Across the throttle</source>
        <translation>Legende zu „Über den Gasbereich“</translation>
    </message>
    <message>
        <source>Throttle (%)</source>
        <translation>Gas (%)</translation>
    </message>
    <message>
        <source>Largest wobble in cruise %1 px.</source>
        <translation>Größtes Wackeln im Reiseflug %1&#xa0;px.</translation>
    </message>
    <message>
        <source>%1 %: %2 px, %3 (worst-case phase %4 px)
%5 rpm</source>
        <translation>%1&#xa0;%: %2&#xa0;px, %3 (ungünstigste Phasenlage %4&#xa0;px)
%5&#xa0;U/min</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Thrust per motor (N)</source>
        <translation>Schub je Motor (N)</translation>
    </message>
    <message>
        <source>Wobble (px)</source>
        <translation>Wackeln (px)</translation>
    </message>
    <message>
        <source>Worst-case phase (px)</source>
        <translation>Ungünstigste Phasenlage (px)</translation>
    </message>
    <message>
        <source>%1 %: %2 px, %3
%4</source>
        <translation>%1&#xa0;%: %2&#xa0;px, %3
%4</translation>
    </message>
    <message>
        <source>Seen in films</source>
        <translation>In Filmen gesehen</translation>
    </message>
    <message>
        <source>In a film from %1 to %2 %: %3.</source>
        <translation>In einem Film von %1 bis %2&#xa0;%: %3.</translation>
    </message>
    <message>
        <source>filmed</source>
        <translation>gefilmt</translation>
    </message>
    <message>
        <source>%1.</source>
        <translation>%1.</translation>
    </message>
    <message>
        <source>Filmed (px)</source>
        <translation>Gefilmt (px)</translation>
    </message>
    <message>
        <source>The craft has been changed since it was filmed.</source>
        <translation>Der Kopter wurde geändert, seit er gefilmt wurde.</translation>
    </message>
    <message>
        <source>filmed before a change</source>
        <translation>vor einer Änderung gefilmt</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ThrustButton</name>
    <message>
        <source>From a thrust table…</source>
        <translation>Aus einer Schubtabelle…</translation>
    </message>
    <message>
        <source>Works out the coefficients, and KV, from a table noted on a thrust stand.</source>
        <translation>Berechnet die Beiwerte und KV aus einer Tabelle vom Schubprüfstand.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::ThrustDialog</name>
    <message>
        <source>From a thrust table</source>
        <translation>Aus einer Schubtabelle</translation>
    </message>
    <message>
        <source>Thrust and power over the speed, noted on a thrust stand, give the propeller&apos;s coefficients; voltage, current and throttle beside them give KV.</source>
        <translation>Schub und Leistung über der Drehzahl, am Schubprüfstand notiert, ergeben die Beiwerte des Propellers; Spannung, Strom und Gas daneben ergeben KV.</translation>
    </message>
    <message>
        <source>Take KV as well</source>
        <translation>KV auch übernehmen</translation>
    </message>
    <message>
        <source>&amp;Open a table…</source>
        <translation>Tabelle ö&amp;ffnen…</translation>
    </message>
    <message>
        <source>&lt;p&gt;A text file with one row a throttle: comma, semicolon or tab between the cells, with or without a row of names.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Eine Textdatei mit einer Zeile je Gasstellung: Komma, Semikolon oder Tabulator zwischen den Zellen, mit oder ohne Zeile mit Namen.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Table</source>
        <translation>Tabelle</translation>
    </message>
    <message>
        <source>Air density at the stand</source>
        <translation>Luftdichte am Prüfstand</translation>
    </message>
    <message>
        <source>kg/m³</source>
        <translation>kg/m³</translation>
    </message>
    <message>
        <source>1.2 near the sea in mild weather, about 1.0 at 1800 m.</source>
        <translation>1,2 nahe dem Meer bei mildem Wetter, etwa 1,0 auf 1800&#xa0;m.</translation>
    </message>
    <message>
        <source>Accuracy of the stand</source>
        <translation>Genauigkeit des Prüfstands</translation>
    </message>
    <message>
        <source>%</source>
        <translation>%</translation>
    </message>
    <message>
        <source>By how much scale and meters may be off in all rows alike; a known mass on the scale tells.</source>
        <translation>Um wie viel Waage und Messgeräte in allen Zeilen gleich danebenliegen können; eine bekannte Masse auf der Waage sagt es.</translation>
    </message>
    <message>
        <source>&lt;p&gt;Only where the throttle noted is the share of the voltage that the motor gets.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Nur wenn das notierte Gas der Anteil der Spannung ist, den der Motor bekommt.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Drehzahl</translation>
    </message>
    <message>
        <source>rpm</source>
        <translation>U/min</translation>
    </message>
    <message>
        <source>Thrust over speed</source>
        <translation>Schub über der Drehzahl</translation>
    </message>
    <message>
        <source>Thrust</source>
        <translation>Schub</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>Shaft power over speed</source>
        <translation>Wellenleistung über der Drehzahl</translation>
    </message>
    <message>
        <source>Shaft power</source>
        <translation>Wellenleistung</translation>
    </message>
    <message>
        <source>W</source>
        <translation>W</translation>
    </message>
    <message>
        <source>Open a thrust table</source>
        <translation>Schubtabelle öffnen</translation>
    </message>
    <message>
        <source>Tables (*.csv *.tsv *.txt);;All files (*)</source>
        <translation>Tabellen (*.csv *.tsv *.txt);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Not opened: %1.</source>
        <translation>Nicht geöffnet: %1.</translation>
    </message>
    <message>
        <source>No coefficients: %1.</source>
        <translation>Keine Beiwerte: %1.</translation>
    </message>
    <message>
        <source>Cells that cannot be read, in bold in the table: %1.</source>
        <translation>Unlesbare Zellen, in der Tabelle fett: %1.</translation>
    </message>
    <message>
        <source>A row for each throttle: its speed, its thrust, and torque or power, or voltage and current. Where the speed is missing, throttle and voltage will do.</source>
        <translation>Eine Zeile je Gasstellung: Drehzahl, Schub, dazu Drehmoment oder Leistung, oder Spannung und Strom. Fehlt die Drehzahl, genügen Gas und Spannung.</translation>
    </message>
    <message>
        <source>Thrust coefficient: %1 now, %2 then, from %3 rows.</source>
        <translation>Schubbeiwert: jetzt %1, dann %2, aus %3 Zeilen.</translation>
    </message>
    <message>
        <source>Power coefficient: %1 now, %2 then, from %3 rows.</source>
        <translation>Leistungsbeiwert: jetzt %1, dann %2, aus %3 Zeilen.</translation>
    </message>
    <message>
        <source>KV: %1 now, %2 by the table, from %3 rows.</source>
        <translation>KV: jetzt %1, nach der Tabelle %2, aus %3 Zeilen.</translation>
    </message>
    <message>
        <source>thrust stand, %1</source>
        <translation>Schubprüfstand, %1</translation>
    </message>
    <message>
        <source>take the thrust table</source>
        <translation>Schubtabelle übernehmen</translation>
    </message>
    <message>
        <source>%1 ± %2&#xa0;%</source>
        <translation>%1 ± %2&#xa0;%</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TraceChart</name>
    <message>
        <source>Trace</source>
        <translation>Verlauf</translation>
    </message>
    <message>
        <source>Legend of the trace</source>
        <translation>Legende des Verlaufs</translation>
    </message>
    <message>
        <source>Time (s)</source>
        <translation>Zeit (s)</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <comment>channel and value</comment>
        <translation>%1&#xa0;%2</translation>
    </message>
    <message>
        <source>%1 s: %2</source>
        <translation>%1&#xa0;s: %2</translation>
    </message>
    <message>
        <source>No recording is shown.</source>
        <translation>Es wird keine Aufzeichnung gezeigt.</translation>
    </message>
    <message>
        <source>%1 over %2 s; the part from %3 to %4 s is used.</source>
        <translation>%1 über %2&#xa0;s; benutzt wird der Teil von %3 bis %4&#xa0;s.</translation>
    </message>
    <message>
        <source>%1 over %2 s; all of it is used.</source>
        <translation>%1 über %2&#xa0;s; alles wird benutzt.</translation>
    </message>
    <message>
        <source>%1, least</source>
        <translation>%1, kleinster Wert</translation>
    </message>
    <message>
        <source>%1, most</source>
        <translation>%1, größter Wert</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TransmissibilityChart</name>
    <message>
        <source>Transmissibility</source>
        <translation>Übertragungsfaktor</translation>
    </message>
    <message>
        <source>fore and aft (x)</source>
        <translation>längs (x)</translation>
    </message>
    <message>
        <source>sideways (y)</source>
        <translation>quer (y)</translation>
    </message>
    <message>
        <source>up and down (z)</source>
        <translation>auf und ab (z)</translation>
    </message>
    <message>
        <source>Flight modes</source>
        <translation>Eigenschwingungen im Flug</translation>
    </message>
    <message>
        <source>Excitation bands</source>
        <translation>Anregungsbänder</translation>
    </message>
    <message>
        <source>Orders at the cursor</source>
        <translation>Ordnungen am Gaszeiger</translation>
    </message>
    <message>
        <source>flight modes (Hz):</source>
        <translation>Schwingungen im Flug (Hz):</translation>
    </message>
    <message>
        <source>excitation in cruise:</source>
        <translation>Anregung im Reiseflug:</translation>
    </message>
    <message>
        <source>Legend of the transmissibility</source>
        <translation>Legende zum Übertragungsfaktor</translation>
    </message>
    <message>
        <source>Frequency (Hz)</source>
        <translation>Frequenz (Hz)</translation>
    </message>
    <message>
        <source>Camera per airframe</source>
        <translation>Kamera zu Rahmen</translation>
    </message>
    <message>
        <source>%1: %2 Hz</source>
        <comment>order</comment>
        <translation>%1: %2&#xa0;Hz</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1 peaks at %2 Hz with %3 times the airframe&apos;s motion</source>
        <translation>%1: Spitze bei %2&#xa0;Hz mit dem %3-Fachen der Rahmenbewegung</translation>
    </message>
    <message>
        <source>in cruise the %1 lies between %2 and %3 Hz</source>
        <translation>im Reiseflug liegt die %1 zwischen %2 und %3&#xa0;Hz</translation>
    </message>
    <message>
        <source>%1: %2.</source>
        <translation>%1: %2.</translation>
    </message>
    <message>
        <source>%1 Hz: x %2, y %3, z %4</source>
        <translation>%1&#xa0;Hz: x %2, y %3, z %4</translation>
    </message>
    <message>
        <source>
%1, %2 Hz</source>
        <translation>
%1, %2&#xa0;Hz</translation>
    </message>
    <message>
        <source>1:1</source>
        <translation>1:1</translation>
    </message>
    <message>
        <source>roll (about x)</source>
        <translation>Rollen (um x)</translation>
    </message>
    <message>
        <source>pitch (about y)</source>
        <translation>Nicken (um y)</translation>
    </message>
    <message>
        <source>yaw (about z)</source>
        <translation>Gieren (um z)</translation>
    </message>
    <message>
        <source>Bay per airframe</source>
        <translation>Gondel zu Rahmen</translation>
    </message>
    <message>
        <source>%1 Hz: roll %2, pitch %3, yaw %4</source>
        <translation>%1&#xa0;Hz: Rollen %2, Nicken %3, Gieren %4</translation>
    </message>
    <message>
        <source>%1 Hz
%2: %3</source>
        <translation>%1&#xa0;Hz
%2: %3</translation>
    </message>
    <message>
        <source>%1, camera per airframe</source>
        <translation>%1, Kamera zu Rahmen</translation>
    </message>
    <message>
        <source>%1, bay per airframe</source>
        <translation>%1, Gondel zu Rahmen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TubeBench</name>
    <message>
        <source>Free length</source>
        <translation>Freie Länge</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Stretch</source>
        <translation>Dehnung</translation>
    </message>
    <message>
        <source>%</source>
        <translation>%</translation>
    </message>
    <message>
        <source>Tube figures</source>
        <translation>Schlauchmaße</translation>
    </message>
    <message>
        <source>How much longer the tube is fitted than it lies relaxed. With drilled holes it sets the free length.</source>
        <translation>Um wie viel länger der Schlauch eingebaut ist, als er entspannt liegt. Ist schon gebohrt, ergibt sich daraus die freie Länge.</translation>
    </message>
    <message>
        <source>Grip of each clamp</source>
        <translation>Klemmlänge je Klemme</translation>
    </message>
    <message>
        <source>How much tube each clamp holds; only the cut length depends on it.</source>
        <translation>Wie viel Schlauch jede Klemme fasst; nur die Schnittlänge hängt davon ab.</translation>
    </message>
    <message>
        <source>Clamp grip</source>
        <translation>Klemmlänge</translation>
    </message>
    <message>
        <source>%1, slider</source>
        <translation>%1, Schieberegler</translation>
    </message>
    <message>
        <source>%1 of the tubes</source>
        <translation>%1 der Schläuche</translation>
    </message>
    <message>
        <source>change the free length</source>
        <translation>freie Länge ändern</translation>
    </message>
    <message>
        <source>change the stretch</source>
        <translation>Dehnung ändern</translation>
    </message>
    <message>
        <source>Cut</source>
        <translation>Schnittlänge</translation>
    </message>
    <message>
        <source>Holes (mean)</source>
        <translation>Bohrungen (Mittel)</translation>
    </message>
    <message>
        <source>Hole spacing</source>
        <translation>Bohrungsabstand</translation>
    </message>
    <message>
        <source>Tension</source>
        <translation>Zugkraft</translation>
    </message>
    <message>
        <source>%1 N</source>
        <translation>%1&#xa0;N</translation>
    </message>
    <message>
        <source>%1 gf</source>
        <translation>%1&#xa0;gf</translation>
    </message>
    <message>
        <source>Hang it &amp;level</source>
        <translation>&amp;Waagerecht aufhängen</translation>
    </message>
    <message>
        <source>Finds the elevations of the tubes, and small differences of stretch, with which the bay rests where it is drawn; in a drilled craft their free lengths. One step to undo.</source>
        <translation>Findet die Neigungen der Schläuche und kleine Unterschiede der Dehnung, mit denen die Gondel dort ruht, wo sie gezeichnet ist; bei einem gebohrten Kopter ihre freien Längen. In einem Schritt rückgängig zu machen.</translation>
    </message>
    <message>
        <source>hang it level</source>
        <translation>waagerecht aufhängen</translation>
    </message>
    <message>
        <source>as drawn</source>
        <translation>wie gezeichnet</translation>
    </message>
    <message>
        <source>%1 mm down</source>
        <translation>%1&#xa0;mm tiefer</translation>
    </message>
    <message>
        <source>%1 mm up</source>
        <translation>%1&#xa0;mm höher</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>as fitted</source>
        <translation>eingebaut</translation>
    </message>
    <message>
        <source>at rest</source>
        <translation>in Ruhe</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1&#xa0;%</translation>
    </message>
    <message>
        <source>Elevation</source>
        <translation>Neigung</translation>
    </message>
    <message>
        <source>%1°</source>
        <translation>%1°</translation>
    </message>
    <message>
        <source>Bay</source>
        <translation>Gondel</translation>
    </message>
    <message>
        <source>Tube bench: to the free length</source>
        <translation>Schläuche einstellen: zur freien Länge</translation>
    </message>
    <message>
        <source>Tube bench: to the stretch</source>
        <translation>Schläuche einstellen: zur Dehnung</translation>
    </message>
    <message>
        <source>Arrow keys move it. From anywhere: %1</source>
        <translation>Die Pfeiltasten bewegen ihn. Von überall: %1</translation>
    </message>
    <message>
        <source>Tube bench</source>
        <translation>Schläuche einstellen</translation>
    </message>
    <message>
        <source>cut %1, holes %2, tension %3 N</source>
        <translation>Zuschnitt %1, Bohrungen %2, Zugkraft %3&#xa0;N</translation>
    </message>
    <message>
        <source>drag, and watch the curves move</source>
        <translation>ziehen und zusehen, wie die Kurven wandern</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TubeDrawing</name>
    <message>
        <source>Drawing of one tube</source>
        <translation>Zeichnung eines Schlauchs</translation>
    </message>
    <message>
        <source>Cut %1 long; %2 free between the clamps; fitted over %3.</source>
        <translation>%1 lang geschnitten; %2 frei zwischen den Klemmen; auf %3 gedehnt eingebaut.</translation>
    </message>
    <message>
        <source>%1 mm</source>
        <translation>%1&#xa0;mm</translation>
    </message>
    <message>
        <source>As cut: %1</source>
        <translation>Geschnitten: %1</translation>
    </message>
    <message>
        <source>%1 free</source>
        <translation>%1 frei</translation>
    </message>
    <message>
        <source>As fitted</source>
        <translation>Eingebaut</translation>
    </message>
    <message>
        <source>%1 apart</source>
        <translation>Abstand %1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TuneChip</name>
    <message>
        <source>Kept tune %1</source>
        <translation>Gemerkte Abstimmung %1</translation>
    </message>
    <message>
        <source>Kept tune %1: %2</source>
        <translation>Gemerkte Abstimmung %1: %2</translation>
    </message>
    <message>
        <source>%1
%2
Click to open the list of kept tunes at this one.</source>
        <translation>%1
%2
Ein Klick öffnet die Liste der gemerkten Abstimmungen bei dieser.</translation>
    </message>
    <message>
        <source>being worked out</source>
        <translation>wird berechnet</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TunesModel</name>
    <message>
        <source>Tube</source>
        <translation>Schlauch</translation>
    </message>
    <message>
        <source>Free length</source>
        <translation>Freie Länge</translation>
    </message>
    <message>
        <source>Stretch</source>
        <translation>Dehnung</translation>
    </message>
    <message>
        <source>Worst in cruise</source>
        <translation>Größtes im Reiseflug</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Urteil</translation>
    </message>
    <message>
        <source>Across the throttle</source>
        <translation>Über den Gasbereich</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>no answer</source>
        <translation>kein Ergebnis</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1&#xa0;%</translation>
    </message>
    <message>
        <source>by its holes</source>
        <translation>nach Bohrungen</translation>
    </message>
    <message>
        <source>%1 px</source>
        <translation>%1&#xa0;px</translation>
    </message>
    <message>
        <source>wobble over the throttle, a drawing</source>
        <translation>Wackeln über den Gasbereich, eine Zeichnung</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Rename a kept tune</source>
        <translation>Gemerkte Abstimmung umbenennen</translation>
    </message>
    <message>
        <source>Change a kept tune&apos;s note</source>
        <translation>Notiz einer gemerkten Abstimmung ändern</translation>
    </message>
    <message>
        <source>a kept tune needs a name</source>
        <translation>eine gemerkte Abstimmung braucht einen Namen</translation>
    </message>
    <message>
        <source>Tune</source>
        <translation>Abstimmung</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Kept on %1. Double-click or F2 renames.</source>
        <translation>Gemerkt am %1. Doppelklick oder F2 benennt um.</translation>
    </message>
    <message>
        <source>Double-click or F2 renames.</source>
        <translation>Doppelklick oder F2 benennt um.</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TunesPanel</name>
    <message>
        <source>&amp;Keep this tune</source>
        <translation>Abstimmung &amp;merken</translation>
    </message>
    <message>
        <source>Puts the present tube, length, stretch and mounts aside under a name.</source>
        <translation>Merkt Schlauch, Länge, Dehnung und Aufhängung, wie sie jetzt sind, unter einem Namen.</translation>
    </message>
    <message>
        <source>Take this tune</source>
        <translation>Abstimmung übernehmen</translation>
    </message>
    <message>
        <source>Makes the chosen tune the present one; one step for undo.</source>
        <translation>Macht die gewählte Abstimmung zur jetzigen; in einem Schritt rückgängig zu machen.</translation>
    </message>
    <message>
        <source>Delete</source>
        <translation>Löschen</translation>
    </message>
    <message>
        <source>Deletes the chosen tune; undo brings it back.</source>
        <translation>Löscht die gewählte Abstimmung; Rückgängig holt sie zurück.</translation>
    </message>
    <message>
        <source>Kept tunes</source>
        <translation>Gemerkte Abstimmungen</translation>
    </message>
    <message>
        <source>Show the kept tunes</source>
        <translation>Gemerkte Abstimmungen zeigen</translation>
    </message>
    <message>
        <source>Take the chosen tune</source>
        <translation>Gewählte Abstimmung übernehmen</translation>
    </message>
    <message>
        <source>Delete the chosen tune</source>
        <translation>Gewählte Abstimmung löschen</translation>
    </message>
    <message>
        <source>Keep a tune</source>
        <translation>Abstimmung merken</translation>
    </message>
    <message>
        <source>Take the tune %1</source>
        <translation>Abstimmung %1 übernehmen</translation>
    </message>
    <message>
        <source>Delete the tune %1</source>
        <translation>Abstimmung %1 löschen</translation>
    </message>
    <message>
        <source>Opens the line into a list, to rename, take back or delete a tune.</source>
        <translation>Öffnet die Zeile zur Liste, um eine Abstimmung umzubenennen, zurückzuholen oder zu löschen.</translation>
    </message>
    <message>
        <source>Kept tunes in a line</source>
        <translation>Gemerkte Abstimmungen in einer Zeile</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TunesStrip</name>
    <message>
        <source>More kept tunes</source>
        <translation>Weitere gemerkte Abstimmungen</translation>
    </message>
    <message>
        <source>Opens the list of all kept tunes.</source>
        <translation>Öffnet die Liste aller gemerkten Abstimmungen.</translation>
    </message>
    <message>
        <source>+%1</source>
        <translation>+%1</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TuningCharts</name>
    <message>
        <source>camera motion over airframe motion</source>
        <translation>Kamera- zu Rahmenbewegung</translation>
    </message>
    <message>
        <source>Log axis</source>
        <translation>Log. Achse</translation>
    </message>
    <message>
        <source>Logarithmic frequency axis</source>
        <translation>Logarithmische Frequenzachse</translation>
    </message>
    <message>
        <source>Gives low and high frequencies the same room.</source>
        <translation>Gibt tiefen und hohen Frequenzen gleich viel Platz.</translation>
    </message>
    <message>
        <source>shifts</source>
        <translation>Verschieben</translation>
    </message>
    <message>
        <source>turns</source>
        <translation>Drehen</translation>
    </message>
    <message>
        <source>Motion of the airframe</source>
        <translation>Bewegung des Rahmens</translation>
    </message>
    <message>
        <source>Shifts along an axis, or turns about it: only turns bend the picture.</source>
        <translation>Verschieben entlang einer Achse oder Drehen um sie: Nur Drehungen verbiegen das Bild.</translation>
    </message>
    <message>
        <source>what the film shows of it; drag the upright line</source>
        <translation>was der Film davon zeigt; senkrechte Linie ziehen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::TuningView</name>
    <message>
        <source>What it comes to</source>
        <translation>Was sich ergibt</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Befunde</translation>
    </message>
    <message>
        <source>Suggestions</source>
        <translation>Vorschläge</translation>
    </message>
    <message>
        <source>Warnings</source>
        <translation>Warnungen</translation>
    </message>
    <message>
        <source>Film</source>
        <translation>Film</translation>
    </message>
    <message>
        <source>%1 of the side panel</source>
        <translation>%1, Seitenfeld</translation>
    </message>
    <message>
        <source>Warnings (%1)</source>
        <translation>Warnungen (%1)</translation>
    </message>
    <message>
        <source>Craft</source>
        <translation>Kopter</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::UncertaintyPanel</name>
    <message>
        <source>What to measure first</source>
        <translation>Was zuerst zu messen ist</translation>
    </message>
    <message>
        <source>Progress of the uncertainty</source>
        <translation>Fortschritt der Unsicherheit</translation>
    </message>
    <message>
        <source>how sure it is</source>
        <translation>wie sicher das ist</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::VariableRanges</name>
    <message>
        <source>The craft is drilled: the holes stay where they are, and with them elevation and distance; the stretch follows from the length.</source>
        <translation>Der Kopter ist gebohrt: Die Bohrungen bleiben, wo sie sind, und mit ihnen Neigung und Abstand; die Dehnung folgt aus der Länge.</translation>
    </message>
    <message>
        <source>Sets all ranges to what is usual around the present tune.</source>
        <translation>Setzt alle Bereiche auf das, was um die jetzige Abstimmung üblich ist.</translation>
    </message>
    <message>
        <source>%1 from</source>
        <translation>%1 von</translation>
    </message>
    <message>
        <source>%1 to</source>
        <translation>%1 bis</translation>
    </message>
    <message>
        <source>to</source>
        <translation>bis</translation>
    </message>
    <message>
        <source>%</source>
        <translation>%</translation>
    </message>
    <message>
        <source>How far the search looks.</source>
        <translation>Wie weit gesucht wird.</translation>
    </message>
    <message>
        <source>%1: the first number must not be larger than the second</source>
        <translation>%1: Die erste Zahl darf nicht größer als die zweite sein</translation>
    </message>
    <message>
        <source>Gives every tune the elevations, and small differences of stretch, with which the bay rests where it is drawn.</source>
        <translation>Gibt jeder Abstimmung die Neigungen und kleinen Unterschiede der Dehnung, mit denen die Gondel dort ruht, wo sie gezeichnet ist.</translation>
    </message>
    <message>
        <source>Usual ranges</source>
        <translation>Übliche Bereiche</translation>
    </message>
    <message>
        <source>Keep it level</source>
        <translation>Waagerecht halten</translation>
    </message>
    <message>
        <source>Keep it level in the search</source>
        <translation>In der Suche waagerecht halten</translation>
    </message>
    <message>
        <source>%1 may change</source>
        <translation>%1 darf sich ändern</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::Verdict</name>
    <message>
        <source>Verdict</source>
        <translation>Urteil</translation>
    </message>
    <message>
        <source>Verdict, details</source>
        <translation>Urteil, Einzelheiten</translation>
    </message>
    <message>
        <source>Verdict for cruise</source>
        <translation>Urteil für den Reiseflug</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::VerdictStrip</name>
    <message>
        <source>&amp;Apply</source>
        <translation>&amp;Übernehmen</translation>
    </message>
    <message>
        <source>Best next step</source>
        <translation>Bester nächster Schritt</translation>
    </message>
    <message>
        <source>What it changes</source>
        <translation>Was er ändert</translation>
    </message>
    <message>
        <source>How sure the forecast is</source>
        <translation>Wie sicher die Vorhersage ist</translation>
    </message>
    <message>
        <source>Apply the best next step</source>
        <translation>Besten nächsten Schritt übernehmen</translation>
    </message>
    <message>
        <source>Takes the step; undo takes it back.</source>
        <translation>Übernimmt den Schritt; Rückgängig nimmt ihn zurück.</translation>
    </message>
    <message>
        <source>Warnings, counted</source>
        <translation>Warnungen, gezählt</translation>
    </message>
    <message>
        <source>Shows the warnings.</source>
        <translation>Zeigt die Warnungen.</translation>
    </message>
    <message>
        <source>No answer for this craft</source>
        <translation>Kein Ergebnis für diesen Kopter</translation>
    </message>
    <message>
        <source>The charts show the last craft that had one.</source>
        <translation>Die Diagramme zeigen den letzten Kopter, der eines hatte.</translation>
    </message>
    <message>
        <source>Next step: trying…</source>
        <translation>Nächster Schritt: wird gesucht…</translation>
    </message>
    <message>
        <source>Next step: %1</source>
        <translation>Nächster Schritt: %1</translation>
    </message>
    <message>
        <source>No single step makes it clearly quieter.</source>
        <translation>Kein einzelner Schritt macht es merklich ruhiger.</translation>
    </message>
    <message>
        <source>No single step mends it: find a tune.</source>
        <translation>Kein einzelner Schritt behebt es: Abstimmung finden.</translation>
    </message>
    <message>
        <source>&amp;Find a tune…</source>
        <translation>Abstimmung &amp;finden…</translation>
    </message>
    <message>
        <source>Find a tune</source>
        <translation>Abstimmung finden</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::WarningsPanel</name>
    <message>
        <source>Warnings</source>
        <translation>Warnungen</translation>
    </message>
</context>
<context>
    <name>stillbay::ui::WelcomePage</name>
    <message>
        <source>Which tube keeps the vibration out of your film?</source>
        <translation>Welcher Schlauch hält die Schwingungen vom Film fern?</translation>
    </message>
    <message>
        <source>Describe your craft once: its parts, motors, tubes and camera. Then drag tube length and stretch, and see at which throttle the film stays clean.</source>
        <translation>Den Kopter einmal beschreiben: Teile, Motoren, Schläuche und Kamera. Dann Schlauchlänge und Dehnung ziehen und sehen, bei welchem Gas der Film sauber bleibt.</translation>
    </message>
    <message>
        <source>Open a craft…</source>
        <translation>Kopter öffnen…</translation>
    </message>
    <message>
        <source>or drop a .stillbay file on this window.</source>
        <translation>oder eine .stillbay-Datei auf dieses Fenster ziehen.</translation>
    </message>
    <message>
        <source>Start from an invented sample:</source>
        <translation>Mit einem erfundenen Beispiel beginnen:</translation>
    </message>
    <message>
        <source>Sample: %1</source>
        <translation>Beispiel: %1</translation>
    </message>
    <message>
        <source>New craft…</source>
        <translation>Neuer Kopter…</translation>
    </message>
</context>
</TS>
