# The words of the studio in German. Terms of the trade as makers write them (feste Masche,
# Runde, Maschenprobe, Füllwatte); not yet read by a native speaker. Keys and the names in
# braces stay as they are; a message that is missing here is said in English.

## Commands: their names, and a sentence on each

command-new = Neu …
command-open = Öffnen …
command-save = Speichern
command-save-as = Speichern unter …
command-undo = Rückgängig
command-redo = Wiederholen
command-light-or-dark = Hell oder dunkel
command-shape = Form
command-assembly = Montage
command-sizes = Größen
command-sheet = Blatt
command-proofread = Korrektur
command-open-pattern = Anleitung öffnen …
command-paste = Einfügen
command-copy-the-text = Text kopieren
command-save-the-text = Text speichern …
command-make-a-piece-of-it = Teil daraus machen
command-copy = Kopieren
command-copy-the-spoken-script = Sprechtext kopieren
command-copy-the-shop-text = Shoptext kopieren
command-export-picture = Bild exportieren …
command-export-turning = Drehend exportieren …
command-previous-round = Vorige Runde
command-next-round = Nächste Runde
command-first-round = Erste Runde
command-last-round = Letzte Runde
command-deselect = Auswahl aufheben
command-copy-line = Zeile kopieren
command-pin = Festhalten
command-one-stitch-more = Eine Masche mehr
command-one-stitch-fewer = Eine Masche weniger
command-previous-knot = Voriger Stützpunkt
command-next-knot = Nächster Stützpunkt
command-remove-knot = Stützpunkt entfernen
command-corner = Ecke
command-next-stitch = Nächste Maschenart
command-next-loop = Nächstes Maschenglied
command-plain = Schlicht
command-fit-view = Einpassen
command-magnet = Magnet
command-picture = Bild …
command-trace = Nachzeichnen …
command-lesson = Lektion
command-previous-step = Voriger Schritt
command-next-step = Nächster Schritt
command-hide-numbers = Zahlen verbergen
command-present = Vorführen
command-stop-or-continue = Anhalten oder fortsetzen
command-print-this-step = Diesen Schritt drucken …
command-print-every-step-for-a-class = Alle Schritte für eine Klasse drucken …
command-make-a-project-of-the-lesson = Projekt aus der Lektion machen
command-open-a-course = Kurs öffnen …
command-save-the-course-to-change-it = Kurs zum Ändern speichern …
command-make = Häkeln
command-settings = Einstellungen …
command-keys = Tasten …
command-larger-text = Größere Schrift
command-smaller-text = Kleinere Schrift
command-usual-text = Übliche Schrift
command-new-does = Ein Teil aus einer Form beginnen oder ein Projekt öffnen
command-open-does = Eine Projektdatei öffnen
command-save-does = Das Projekt speichern
command-save-as-does = Das Projekt unter anderem Namen speichern
command-undo-does = Den letzten Schritt zurücknehmen
command-redo-does = Den zurückgenommenen Schritt wiederholen
command-theme-does = Zwischen hell und dunkel wechseln
command-shape-does = Das Teil formen
command-assembly-does = Die Teile zusammensetzen; sehen, wie die Figur steht und hängt
command-sizes-does = Das Teil in anderen Größen, passend zu einer Naht, nach einer Probe
command-sheet-does = Die Anleitung lesen
command-proofread-does = Eine geschriebene Anleitung prüfen, die eigene oder eine fremde
command-open-pattern-does = Eine geschriebene Anleitung öffnen: Text, Webseite, Dokument (.rtf, .docx) oder PDF
command-paste-pattern-does = Eine geschriebene Anleitung aus der Zwischenablage einfügen
command-copy-pattern-does = Die Anleitung so kopieren, wie sie jetzt ist, mit allen Korrekturen
command-save-pattern-does = Die Anleitung, wie sie jetzt ist, als Textdatei speichern
command-make-piece-does = Ein Teil mit diesen Maschenzahlen anlegen, in der Maschenprobe des gewählten Teils
command-copy-sheet-does = Die ganze Anleitung als Text kopieren
command-copy-script-does = Die Anleitung als Sätze zum Sprechen kopieren, mit Zeiten
command-copy-blurb-does = Größe, Schwierigkeit, Material und Inhalt für einen Shop kopieren
command-save-sheet-does = Das Blatt als .pdf, .html, .md oder .txt, eine Seite als .png oder Untertitel als .srt oder .vtt speichern
command-save-body-does = Den Körper, wie er gerade gedreht ist, als Bild ohne Hintergrund speichern
command-save-turning-does = Den Körper bei einer ganzen Drehung als bewegtes Bild speichern
command-previous-round-does = Die vorige Runde wählen
command-next-round-does = Die nächste Runde wählen
command-first-round-does = Die erste Runde wählen
command-last-round-does = Die letzte Runde wählen
command-deselect-does = Runde, Stützpunkt oder Teil nicht mehr auswählen
command-copy-round-does = Die Zeile der gewählten Runde als Text kopieren
command-pin-does = Die Maschenzahl dieser Runde festhalten oder freigeben
command-more-stitches-does = Die gewählte Runde bei einer Masche mehr festhalten
command-fewer-stitches-does = Die gewählte Runde bei einer Masche weniger festhalten
command-previous-knot-does = Den vorigen Stützpunkt wählen
command-next-knot-does = Den nächsten Stützpunkt wählen
command-remove-knot-does = Den gewählten Stützpunkt entfernen; an der Figur das Teil
command-corner-does = Den Umriss an diesem Stützpunkt knicken lassen oder nicht
command-next-kind-does = Ab der gewählten Runde in der nächsten Maschenart häkeln
command-next-loop-does = Die gewählte Runde in beide, das vordere oder das hintere Maschenglied häkeln
command-plain-does = Die gewählte Runde schlicht halten oder formen lassen
command-fit-does = Das ganze Teil auf der Zeichenfläche zeigen
command-magnet-does = Stützpunkte rasten an der Achse, aneinander und an ganzen mm oder Sechzehntelzoll ein; mit Alt nicht
command-trace-does = Den Umriss im Bild finden und ansehen, bevor er gilt
command-picture-does = Ein Bild zum Nachzeichnen wählen: PNG, JPEG oder WebP
command-lesson-does = Sehen und zeigen, warum eine Zunahme den Stoff wölbt
command-lesson-back-does = Zum vorigen Schritt der Lektion
command-lesson-next-does = Zum nächsten Schritt der Lektion, nach dem letzten zum eigenen Teil
command-lesson-numbers-does = Die Zahlen verbergen, damit Lernende sie finden, oder zeigen
command-lesson-present-does = Das Fenster in großer Schrift füllen, für einen Beamer: die Lektion oder Umriss, Körper und Biegestreifen; Esc beendet es
command-lesson-stop-does = Den Stoff anhalten, wo er ist, oder weiter zur Ruhe kommen lassen
command-print-step-does = Ein Arbeitsblatt mit der Lösung auf der Rückseite und eine Seite für die Lehrkraft als PDF speichern
command-print-lesson-does = Die Seiten aller Schritte und den Leitfaden für die Lehrkraft als ein PDF speichern
command-lesson-project-does = Ein Projekt mit einem Teil für jeden Schritt beginnen, in eigenen Maschen
command-open-course-does = Nach einer eigenen Datei unterrichten, geschrieben wie die eingebaute
command-save-course-does = Den eingebauten Kurs als Datei speichern, um einen eigenen zu schreiben
command-make-does = Das Teil Masche für Masche häkeln
command-settings-does = Sprache, Aussehen, Einheiten, Schriftgröße, Tasten und Seite der Zeichenfläche
command-keys-does = Alle Befehle mit ihren Tasten; zum Suchen tippen
command-larger-does = Alles auf dem Bildschirm eine Stufe größer
command-smaller-does = Alles auf dem Bildschirm eine Stufe kleiner
command-usual-does = Zurück zur üblichen Schriftgröße

## Commands of the Make stage

making-stitch = Masche
making-repeat = Wiederholung
making-round = Runde
making-back = Zurück
making-done = Fertig
making-other-piece = Anderes Teil
making-other-size = Andere Größe
making-go-to = Gehe zu …
making-note = Notiz
making-stitch-does = Eine Masche zählen: eine schlichte, eine Zunahme oder Abnahme
making-repeat-does = Die Wiederholung bis zum Ende zählen
making-round-does = Die Runde bis zum Ende zählen
making-back-does = Den letzten Schritt zurücknehmen
making-done-does = Das ist erledigt; weiter
making-other-does = Zum nächsten Exemplar oder Teil, das noch fehlt
making-size-does = Zur nächsten Größe oder zurück zum Entwurf
making-find-does = Am Anfang einer anderen Runde weiterhäkeln
making-note-does = Eine Notiz zu dieser Runde schreiben

## Groups of commands

group-project = Projekt
group-stages = Bereiche
group-rounds = Runden
group-outline-board = Zeichenfläche
group-pattern = Anleitung
group-lesson = Lektion
group-make = Häkeln
group-studio = Studio

## Names of keys

key-up = Auf
key-down = Ab
key-esc = Esc
key-del = Entf
key-ctrl = Strg+
key-alt = Alt+
key-shift = Umschalt+
key-either = { $first } oder { $second }

## What key commands say on the toy

told-in-round = Rd { $round }
told-after-round = nach Rd { $round }
told-front-line = auf der vorderen Linie
told-from-front = { $n ->
        [one] 1 Masche
       *[other] { $n } Maschen
    } neben der vorderen Linie
told-removed-called-and-what-it-carries = { $called } samt dem, was daran sitzt, entfernt.
told-removed-what-holds-it = Die Halterung ist entfernt.

## Names that many places use

yarn-letter = Garn { $letter }

## Controls of cards

form-what-percent-done = { $what }, { $percent } % fertig
form-name-fewer = { $name }, weniger
form-name-more = { $name }, mehr
form-back-to-word = Zurück zu: { $word }

## Cards over the window

over-close-the-card = Karte schließen
over-back = Schließen (Esc)
yarn-yarn-name = Name des Garns
yarn-how-pictures-show-this-yarn-no-count = So zeigen Bilder dieses Garn; keine Maschenzahl ändert sich
yarn-runs = Lauflänge
yarn-per-100g = m je 100 g
yarn-from-round-round-on = Ab Runde { $round }
yarn-another-yarn = Anderes Garn
yarn-no-change-of-yarn-here = Kein Garnwechsel hier
yarn-face = Garn: { $face }

## What a person writes on the sheet

entry-designer = Entwurf
entry-version = Fassung
entry-license-line = Lizenzzeile
entry-notes = Anmerkungen
entry-assembly = Hinweise zur Montage
entry-your-name = dein Name
entry-2-28-november-2026 = 2, 28. November 2026
entry-for-your-own-use-do-not-resell-the = nur für den eigenen Gebrauch; Anleitung nicht weiterverkaufen
entry-what-it-is-for-how-it-came-to-be = wofür es ist, wie es entstand
entry-what-is-sewn-where-one-paragraph-for = was wo angenäht wird, ein Absatz je Schritt

## New projects

new-new-project = Neues Projekt

## Steps of undo

step-change = Änderung

## Why a measure is missed

measure-stays = Es bleibt bei { $got }: Ein Teil, das nach Runden gegeben ist, hat deren Größe. Für { $asked } neu planen.
measure-asked-cannot-be-planned-give-least-to = { $asked } lässt sich nicht planen: { $least } bis { $most } angeben.
measure-a-round-is-height-high-and-whole = eine Runde ist { $height } hoch, näher kommen ganze Runden nicht
measure-six-stitches-are-width-across-and = sechs Maschen messen { $width } quer, näher kommen gleichmäßige Wiederholungen nicht
measure-asked-comes-to-got-why = Aus { $asked } wird { $got }: { $why }.
step-name-the-project = Projekt benennen
step-drag-knot-knot = Stützpunkt { $knot } ziehen
step-move-knot-knot = Stützpunkt { $knot } bewegen
step-add-knot-knot = Stützpunkt { $knot } hinzufügen
step-remove-knot-knot = Stützpunkt { $knot } entfernen
step-make-knot-knot-sharp-or-smooth = Stützpunkt { $knot } eckig oder rund
step-open-or-close-the-start = Anfang öffnen oder schließen
step-open-or-close-the-end = Ende öffnen oder schließen
step-pin-at = Runde { $round } bei { $count } festhalten
step-pin-round-round = Runde { $round } festhalten
step-unpin-round-round = Runde { $round } freigeben
step-gauge = Maschenprobe
step-stuff-it = Füllung: { $how }
step-firmness = Festigkeit
step-default-simplicity = Übliche Einfachheit
step-simplicity = Einfachheit
step-choose-a-result = Ergebnis wählen
step-yarn-letter-from-round-round = Garn { $letter } ab Runde { $round }
step-paint-stitches = Maschen färben
step-take-paint-off = Farbe wegnehmen
step-paint-round-in-yarn = Runde { $round } in Garn { $letter } färben
step-take-paint-off-round = Farbe von Runde { $round } wegnehmen
step-new-yarn-from-round-round = Neues Garn ab Runde { $round }
step-no-change-of-yarn-at-round-round = Kein Garnwechsel bei Runde { $round }
step-shape-the-outline = Umriss formen
step-picture-to-trace = Bild zum Nachzeichnen
step-remove-the-picture = Bild entfernen
step-height-length = Höhe { $length }
step-width-length = Breite { $length }
step-neck-length = Hals { $length }
step-scale-the-picture = Bildmaßstab
step-make-a-piece-from-a-pattern = Teil aus einer Anleitung
step-make-pieces-from-a-pattern = Teile aus einer Anleitung
step-entry-on-the-sheet = { $entry } auf dem Blatt
step-arrange-the-sheet = Blatt ordnen
step-words-of-the-pattern = Wörter der Anleitung
step-add-a-size = Größe hinzufügen
step-add-the-size-name = Größe { $name } hinzufügen
step-remove-a-size = Größe entfernen
step-size-name = Größe { $name }
step-make-the-piece-another-size = Teil in anderer Größe
step-add-a-seam = Naht hinzufügen
step-remove-seam-number = Naht { $number } entfernen
step-seam-number = Naht { $number }
step-match-seam-number = Naht { $number } angleichen
step-another-yarn = Anderes Garn
step-use-the-measured-sample = Gemessene Probe verwenden
step-move-the-piece-in-the-list = Teil in der Liste verschieben
step-duplicate-the-piece = Teil verdoppeln
step-remove-the-piece = Teil entfernen
step-name-the-piece = Teil benennen
step-how-many-n = Anzahl: { $n }
step-rules = Regeln
step-stack-increases = Zunahmen übereinander
step-spread-increases = Zunahmen versetzt
step-plain-rounds = Schlichte Runden
step-one-round = Runde { $round }
step-rounds = Runden { $from }–{ $to }
step-plain = Schlicht: { $rounds }
step-shaped = Geformt: { $rounds }
step-straight-part-length = Gerades Stück { $length }
step-work-from-the-other-end = Vom anderen Ende häkeln
step-free-knot-knot = Stützpunkt { $knot } lösen
step-hold-knot-knot = Stützpunkt { $knot } halten
step-card-after-knot-knot = Pappe nach Stützpunkt { $knot }
step-no-card-after-knot-knot = Keine Pappe nach Stützpunkt { $knot }
step-kind = Ab Runde { $round }: { $kind }
step-loops-of-round-round = Maschenglieder von Runde { $round }
step-swatches-in-other-stitches = Proben in anderen Maschen
step-spiral-or-joined = Spirale oder geschlossene Runden
step-hook-hand = Häkelhand
step-stuffing-grams-per-liter = Füllwatte, Gramm je Liter

## Steps of undo on the toy

toy-step-move-called = { $called } bewegen
toy-step-what-called-sits-on = Worauf { $called } sitzt
toy-step-edge-of-called = Rand: { $called }
toy-step-turn-called = { $called } drehen
toy-step-tilt-called = { $called } neigen
toy-step-how-deep-called-is-sunk-in = Wie tief { $called } einsinkt
toy-step-how-many-of-called = Anzahl: { $called }
toy-step-what-holds-called = Was { $called } hält
toy-step-stuffing-of-called = Füllung: { $called }
toy-step-front-of-called = Vorne: { $called }
toy-step-what-of-called-is-up = Oben: { $called }
toy-step-size-of-called = Größe: { $called }
toy-step-put-down-called = { $called } hinstellen
toy-step-add-called = { $called } hinzufügen
toy-step-remove-called = { $called } entfernen
toy-step-each-called-its-own-place = Jedem { $called } ein eigener Platz
toy-step-who-it-is-made-for = Für wen es ist
toy-step-attach = Hinzufügen: { $what }
toy-step-change-the-what = Ändern: { $what }
toy-step-remove-what-holds-it = Halterung entfernen
toy-step-cord = Schnur
toy-step-loop = Schlaufe
toy-step-wire = Draht
toy-step-joint = Gelenk
toy-step-embroidery = Stickerei
toy-step-sling = Aufhängung

## Charts of the lesson

chart-increases = Zunahmen
chart-angles = Winkel

## Stages, and what the board and the card show

stage-shape = Form
stage-assembly = Montage
stage-sizes = Größen
stage-sheet = Blatt
stage-lesson = Lektion
stage-proofread = Korrektur
stage-make = Häkeln
board-outline = Umriss
board-body = Körper
board-show-outline = Umriss zeigen
board-show-body = Körper zeigen
card-figures = Fakten
card-checks = Hinweise
card-rules = Regeln
card-simplicity = Einfachheit

## What the sheet is shown as

sheet-as-pages = Seiten
sheet-as-text = Text

## What stands beside the sizes

aside-seams = Nähte
aside-another-yarn = Anderes Garn
aside-sample = Probe
aside-match = Angleichen
aside-toy = Figur

## Sides that the toy is looked at from

look-from-front = Vorne
look-from-side = Seite
look-from-back = Hinten
look-from-free = Frei

## What a mark on the picture says

mark-rectangle = Rechteck
mark-on-it = darauf
mark-beside-it = daneben

## Names of kinds

starter-ball = Kugel
starter-egg = Ei
starter-drop = Tropfen
starter-cone = Kegel
starter-dome = Kuppel
starter-bean = Bohne
starter-dish = Schale
starter-float = Boje
starter-ball-about = Rundum rund
starter-egg-about = Am Anfang schmaler
starter-drop-about = Spitze oben, runder Fuß
starter-cone-about = Spitze oben, offener Rand
starter-dome-about = Steht auf flachem Boden mit Pappe
starter-bean-about = Ein Oval, auf Luftmaschen begonnen
starter-dish-about = Von der Mitte zum offenen Rand
starter-float-about = Körper, Hals und offener Rand
starter-add-ball = Kugel hinzufügen
starter-add-egg = Ei hinzufügen
starter-add-drop = Tropfen hinzufügen
starter-add-cone = Kegel hinzufügen
starter-add-dome = Kuppel hinzufügen
starter-add-bean = Bohne hinzufügen
starter-add-dish = Schale hinzufügen
starter-add-float = Boje hinzufügen
starter-create-ball = Kugel anlegen
starter-create-egg = Ei anlegen
starter-create-drop = Tropfen anlegen
starter-create-cone = Kegel anlegen
starter-create-dome = Kuppel anlegen
starter-create-bean = Bohne anlegen
starter-create-dish = Schale anlegen
starter-create-float = Boje anlegen
firmness-soft = weich
firmness-medium = mittel
firmness-firm = fest
kind-single = Feste Maschen
kind-half-double = Halbe Stäbchen
kind-double = Stäbchen
yarn-smooth = Glatt
yarn-wool = Wolle
yarn-chenille = Chenille

## Colours of yarn

colour-madder = Krapp
colour-brick = Ziegel
colour-rosehip = Hagebutte
colour-foxglove = Fingerhut
colour-plum = Pflaume
colour-iris = Iris
colour-dusk = Dämmerung
colour-slate = Schiefer
colour-lagoon = Lagune
colour-spruce = Fichte
colour-fern = Farn
colour-pistachio = Pistazie
colour-quince = Quitte
colour-mustard = Senf
colour-apricot = Aprikose
colour-blush = Rosé
colour-oat = Hafer
colour-milk = Milch
colour-sand = Sand
colour-hazel = Haselnuss
colour-peat = Torf
colour-char = Kohle
colour-ash = Asche
colour-sky = Himmel

## First steps, and what a crash left

foot-a-moment-ago = eben noch
foot-open-the-last-saved = Zuletzt Gespeichertes öffnen
foot-discard = Verwerfen
foot-offer-it-again-at-the-next-start = Beim nächsten Start wieder anbieten
foot-put-away = Schließen; beim nächsten Start wird es wieder angeboten
foot-recover = Wiederherstellen
foot-crash-saved = Plumpline wurde unerwartet beendet. „{ $title }“ wiederherstellen, Stand { $age }, oder das zuletzt Gespeicherte öffnen?
foot-crash-unsaved = Plumpline wurde unerwartet beendet. „{ $title }“ wiederherstellen, Stand { $age }? Es wurde nie gespeichert.
foot-first-steps = Erste Schritte
foot-close-first-steps = Erste Schritte schließen
foot-close-the-first-steps-for-good = Die ersten Schritte für immer schließen
foot-done = fertig
foot-to-do = offen
foot-first-step-number-state-words = Erster Schritt { $number }, { $state }: { $words }

## The keys card

keys-title = Tasten
keys-hint = alle Befehle; ein Klick führt aus
keys-move-knots = Gewählte Stützpunkte bewegen
keys-move-knots-how = Pfeile; mit Umschalt zehnmal so weit
keys-several-knots = Mehrere Stützpunkte wählen
keys-several-knots-how = Umschalt und Klick, oder einen Rahmen ziehen
keys-no-magnet = Magnet aussetzen
keys-no-magnet-how = Alt beim Ziehen
keys-move-board = Zeichenfläche verschieben
keys-move-board-how = Leertaste oder mittlere Maustaste, und ziehen
keys-zoom = Zeichenfläche oder Körper vergrößern
keys-zoom-how = Mausrad
keys-turn-body = Körper drehen
keys-turn-body-how = Links, Rechts; neigen mit Umschalt und Auf, Ab
keys-move-part = Gewähltes Teil bewegen
keys-move-part-how = Pfeile; mit Umschalt fünfmal so weit; Entf entfernt es
keys-next-control = Zum nächsten Bedienelement
keys-next-control-how = Tab; zurück mit Umschalt und Tab
keys-close = Karte oder Menü schließen
keys-close-how = Esc
keys-type-a-word-or-a-key = Wort oder Taste tippen
keys-search-the-keys = Tasten durchsuchen
keys-with-the-hand = Von Hand
keys-no-match = Keine Treffer.
keys-command-not-now = { $command } (jetzt nicht)

## Notices

notice-stop = Anhalten
notice-undo-what = Rückgängig: { $what }
notice-dismiss = Ausblenden

## The pieces menu

pieces-piece-selected = { $piece }, gewählt
pieces-rename-copy-or-remove-this-piece-or = Dieses Teil umbenennen, verdoppeln oder entfernen, oder ein neues anlegen
pieces-named = Teil { $name }
pieces-piece-name-place-of-many = Teil { $name }, { $place } von { $many }
pieces-piece = Teil
pieces-name-of-the-piece = Name des Teils
pieces-how-many-are-made-of-it-yarn-stuffing = Wie viele davon gehäkelt werden; Garn, Füllung und Zeit auf dem Blatt gelten für alle
pieces-how-many = Anzahl
pieces-duplicate = Verdoppeln
pieces-remove = Entfernen
pieces-earlier = Früher
pieces-later = Später
pieces-add-a-piece = Teil hinzufügen
pieces-pieces = Teile

## Projects worked on before

recent-recent-projects = Zuletzt bearbeitet
recent-remove-stem-from-the-list = { $stem } aus der Liste nehmen
recent-open = { $stem } öffnen
recent-no-longer-there = nicht mehr da
recent-gone = Es ist nicht mehr da; Klick nimmt es aus der Liste

## The settings card

settings-title = Einstellungen
settings-hint = für alle Projekte auf diesem Rechner
settings-look = Aussehen
settings-language = Sprache
settings-language-why = Von Menüs und Karten; eine Anleitung hat ihre eigene, auf dem Blatt
settings-cards-menus-and-lists-come-and-go-at = Karten, Menüs und Listen erscheinen sofort
settings-reduce-motion = Weniger Bewegung
settings-units-and-terms = Maße und Begriffe
settings-hands = Hände
settings-on-the-right-for-a-left-hand-so-that = Rechts für eine linke Hand, damit sie nichts verdeckt
settings-side-of-the-board = Seite der Zeichenfläche
settings-left = links
settings-right = rechts
settings-letters-digits-and-signs-are-shortcuts = Buchstaben, Ziffern und Zeichen wirken allein; wenn aus, nur mit Alt
settings-single-keys = Einzelne Tasten
settings-light-like-drafting-paper-dark-like-a = Hell wie Zeichenpapier, dunkel wie eine Schneidematte
settings-theme = Aussehen
settings-light = hell
settings-dark = dunkel
settings-as-the-system = wie das System
settings-text-size = Schriftgröße
settings-of-everything-on-screen = Von allem auf dem Bildschirm
settings-of-every-length-on-screen-you-can-type = Für alle Längen auf dem Bildschirm; tippen geht in jeder Einheit. Dateien enthalten Millimeter
settings-lengths = Längen
settings-lengths-in = Längen in
settings-cm = cm
settings-mm = mm
settings-inches = Zoll
settings-of-this-pattern-other-languages-and = Für diese Anleitung; weitere Sprachen und Hausstile auf dem Blatt
settings-crochet-terms = Häkelbegriffe
settings-us = US
settings-uk = UK

## The start card

start-makes = { $rounds ->
        [one] 1 Runde
       *[other] { $rounds } Runden
    } mit höchstens { $widest ->
        [one] 1 Masche
       *[other] { $widest } Maschen
    } bei dieser Maschenprobe
start-or-drop-it-on-the-window = oder aufs Fenster ziehen
start-its-profile-is-shown-here = hier erscheint sein Profil
start-trace-it = Nachzeichnen …
start-create-the-piece = Teil anlegen
start-create = Anlegen
start-start-with-this-piece-ctrl-enter = Mit diesem Teil beginnen (Strg+Eingabe)
start-formula = Formel
start-a-radius-for-every-height = Ein Radius für jede Höhe
start-from-a-file = Aus einer Datei
start-you-see-it-before-it-is-used = Erst ansehen, dann verwenden
start-height = Höhe
start-along-the-axis = Entlang der Achse
start-the-short-way-across = Quer, die kurze Seite
start-across-the-axis-at-the-widest = Quer zur Achse, an der breitesten Stelle
start-width = Breite
start-neck = Hals
start-across-the-neck-at-its-narrowest = Quer am Hals, an der schmalsten Stelle
start-length = Länge
start-the-long-way-across = Quer, die lange Seite
start-of-the-superellipse-2-is-half-a-ball = Der Superellipse: 2 ist eine halbe Kugel oder Ellipse, mehr ist kantiger, 1 ein Kegel
start-exponent = Exponent
start-radius-in-mm-by-z-height-mm-t-0-to-1 = Radius in mm nach z (Höhe, mm), t (0 bis 1) oder h
start-of-the-whole-along-the-axis-h = Des Ganzen entlang der Achse: h
start-a-photo-or-a-drawing-of-a-thing-seen = Ein Foto oder eine Zeichnung von der Seite (PNG, JPEG, WebP), das Profil als Pfad (SVG) oder als Tabelle von Radien und Höhen (CSV), oder das Netz eines Drehkörpers (STL, OBJ).
start-along-the-axis-as-the-file-says-until = Entlang der Achse; wie in der Datei, bis etwas anderes getippt wird
start-one-unit-is = Eine Einheit ist
start-a-mesh-does-not-say-which-unit-it-is = Ein Netz sagt nicht, in welcher Einheit es misst
start-reading = Lesen
start-stopped = Angehalten
start-read-it-again = Noch einmal lesen
start-choose-a-file = Datei wählen …
start-choose-a-file-name = Datei wählen
start-width-height-pixels = { $width } × { $height } Pixel
start-its-outline-is-traced-on-the-next-card = Der Umriss wird auf der nächsten Karte nachgezeichnet und gezeigt.
start-here-at-t-t = hier, bei t = { $t }
start-formula-of-the-radius = Formel des Radius
start-z-is-the-height-above-the-start-in-mm = z ist die Höhe über dem Anfang in mm, t ihr Anteil am Ganzen von 0 bis 1, h die ganze Höhe. + - * / ^ und Klammern; sin, cos, sqrt, abs, exp, ln und andere; pi.
start-title = Ein Teil beginnen
start-hint = aus einer Form; jeder Stützpunkt lässt sich danach ziehen
start-starter-shape = Form { $shape }
start-from-formula = Aus einer Formel
start-a-file = Eine Datei
start-photo = Foto
start-drawing = Zeichnung
start-table = Tabelle
start-solid = Körper
start-or-continue-with = Oder weiter mit
start-projects-you-save-or-open-are-listed = Hier stehen gespeicherte und geöffnete Projekte. Eine Projektdatei lässt sich auch aufs Fenster ziehen.
start-open-a-project = Projekt öffnen …
start-open-a-project-name = Projekt öffnen
start-drop-a-project-a-picture-or-a-shape-to = Projekt, Bild oder Form zum Öffnen hier loslassen

## The steps menu

steps-steps = Schritte
steps-all-steps-go-back-to-any = Alle Schritte: zu jedem zurück
steps-no-steps-yet = Noch keine Schritte
steps-as-it-was-opened = Wie geöffnet
steps-earlier-steps = Frühere Schritte
steps-step-step-name = Schritt { $step }: { $name }
steps-now = jetzt
steps-undone = zurückgenommen

## The top strip

top-name-of-the-project-click-to-type = Name des Projekts; zum Tippen klicken
top-project-name = Projektname
top-changes-not-saved-name = nicht gespeichert · { $name }
top-saved-name = gespeichert · { $name }
top-changes-not-saved = nicht gespeichert
top-not-saved-yet = noch nicht gespeichert
top-file = Datei

## Questions before something is lost

ask-save-title-first = „{ $title }“ zuerst speichern?
ask-lost-by-closing = Es hat Änderungen, die nicht gespeichert sind. Beim Schließen des Fensters gingen sie verloren.
ask-lost-by-starting = Es hat Änderungen, die nicht gespeichert sind. Mit einem neuen Teil gingen sie verloren.
ask-lost-by-opening = Es hat Änderungen, die nicht gespeichert sind. Beim Öffnen eines anderen Projekts gingen sie verloren.
ask-save = Speichern
ask-discard = Verwerfen
ask-keep-working = Weiterarbeiten
ask-changed-elsewhere = { $file } wurde anderswo geändert
ask-other-saved = Ein anderes Fenster oder Programm hat „{ $title }“ darin gespeichert.
ask-other-lost = Die andere Fassung geht verloren
ask-not-readable = Was jetzt darin steht, ist kein lesbares Projekt.
ask-file-lost = Der Inhalt der Datei geht verloren
ask-read-only = { $file } ist schreibgeschützt
ask-marked = Jemand hat die Datei vor Änderungen geschützt.
ask-stays-marked = Der Schreibschutz bleibt
ask-this-version-goes-into-own-both-stay = Diese Fassung kommt in { $own }; beide bleiben
ask-save-mine-as-a-copy = Meine als Kopie speichern
ask-what-is-not-saved-here-is-lost = Was hier nicht gespeichert ist, geht verloren
ask-open-the-other-version = Die andere Fassung öffnen
ask-replace-it-with-mine = Durch meine ersetzen
ask-name-already-exists = { $name } gibt es schon
ask-it-is-in-folder = Ordner: { $folder }.
ask-choose-another-name = Anderen Namen wählen
ask-the-file-stays-as-it-is = Die Datei bleibt, wie sie ist
ask-replace-it = Ersetzen
ask-nothing-is-saved-yet = Noch ist nichts gespeichert
ask-save-as = Speichern unter
ask-where-is-the-file = Wo ist die Datei?
ask-this-desktop-shows-no-file-dialog-type = Hier gibt es keinen Dateidialog. Den ganzen Pfad tippen oder ihn suchen:
ask-open = Öffnen
ask-cancel = Abbrechen

## What commands say they did

told-the-text-is-copied = Der Text ist kopiert.
told-the-pattern-is-copied = Die Anleitung ist kopiert.
told-the-spoken-script-is-copied = Der Sprechtext ist kopiert.
told-the-shop-text-is-copied = Der Shoptext ist kopiert.
told-pieces-made = Zum Projekt hinzugefügt, Maschenzahlen festgehalten: { $names }.
told-left-out = Ausgelassen: { $what }.
told-copied-line = Kopiert: { $line }
told-changed-elsewhere = { $file } wurde anderswo geändert. Beim Speichern wird gefragt.
told-gone = { $file } ist nicht mehr da. Speichern schreibt die Datei neu.
told-saved = { $what } gespeichert als { $path }.
told-text-saved = Der Text ist gespeichert als { $path }.
told-name-is-not-a-plumpline-project-drop-a = { $name }: kein Plumpline-Projekt; eine Datei auf .ron, ein Bild oder eine Form (.csv, .svg, .stl, .obj) hierher ziehen
told-the-course-title-is-open = Der Kurs „{ $title }“ ist geöffnet.
told-words-has-to-wait-a-file-dialog-is = { $words } muss warten: Ein Dateidialog ist offen oder eine Datei noch in Gebrauch.
told-a-yarn = Garn
told-yarn-is-in-the-gauge-book = { $yarn } steht im Maschenprobenbuch.
told-your-changes-are-back-save-them-to = Die Änderungen sind wieder da. Speichern, um sie zu behalten.
told-shaped-pinned-and-read-file-new-starts = Geformt, festgehalten und gelesen. Mit Datei, Neu … beginnt ein eigenes Teil.

## How long ago

ago-moment = vor weniger als einer Minute
ago-minutes = vor { $n ->
        [one] 1 Minute
       *[other] { $n } Minuten
    }
ago-hours = vor { $n ->
        [one] 1 Stunde
       *[other] { $n } Stunden
    }
ago-days = vor { $n ->
        [one] 1 Tag
       *[other] { $n } Tagen
    }

## First steps

first-drag-a-knot-of-the-outline = Einen Stützpunkt des Umrisses ziehen
first-pull-a-bars-end-or-pin-a-round = Ein Balkenende ziehen oder eine Runde festhalten
first-read-the-sheet-or-copy-it = Das Blatt lesen oder kopieren

## What is being done

doing-opening-a-project = Projekt wird geöffnet
doing-reading-a-pattern = Anleitung wird gelesen
doing-reading-a-file = Datei wird gelesen
doing-saving-the-text = Text wird gespeichert
doing-looking-at-the-file = Datei wird geprüft
doing-comparing-the-versions = Fassungen werden verglichen
doing-writing-the-sheet = Blatt wird geschrieben
doing-drawing-the-body = Körper wird gezeichnet
doing-printing-the-lesson = Lektion wird gedruckt
doing-saving-the-course = Kurs wird gespeichert
doing-reading-a-course = Kurs wird gelesen
doing-saving-the-project = Projekt wird gespeichert

## Files that were written

file-sheet = Blatt
file-picture = Bild
file-lesson = Lektion
file-course = Kurs

## What an increase does to fabric

bend-ruffle = Rüschen
bend-flat = flach
bend-cup = Wölbung
bend-straight = gerade
bend-draw-in = Einzug

## The Lesson stage

lesson-each-round = Jede Runde
lesson-chart = Diagramm: { $what }
lesson-no-rounds-yet = Noch keine Runden.
lesson-the-angles-are-shown-after-your = Die Winkel erscheinen nach deiner Vorhersage.
lesson-your-prediction = Deine Vorhersage
lesson-answer = Antworten
lesson-give-your-answer = Deine Antwort geben
lesson-increases-round-round = Zunahmen: Runde { $round }
lesson-increases-round-round-gains-gained = Zunahmen: Runde { $round } gewinnt { $gained }, { $bend }
lesson-increases-round-round-bend = Zunahmen: Runde { $round }, { $bend }
lesson-increases-of-1-round-rounds = Zunahmen in { $rounds ->
        [one] 1 Runde
       *[other] { $rounds } Runden
    }
lesson-fabric = Der Stoff
lesson-fabric-other-side = Der Stoff von einer anderen Seite
lesson-step-step-of-all = Schritt { $step } von { $all }
lesson-your-piece-relaxed = dein Teil, entspannt
lesson-rnd-round-gained-st = Rd { $round } · { $gained } M
lesson-rnd-round = Rd { $round }
lesson-preparing = wird vorbereitet …
lesson-held-flat-released-after-your = flach gehalten; nach deiner Vorhersage frei
lesson-stopped = angehalten
lesson-settling = kommt zur Ruhe
lesson-word-share = { $word }, { $share } %
lesson-you-can-change-this-after-your = nach deiner Vorhersage zu ändern
lesson-flat-at = flach { $flat }
lesson-angle-missing-at-each-round-degrees = Fehlender Winkel je Runde, Grad
lesson-as-the-fabric-lies = wie der Stoff liegt
lesson-forecast = Prognose
lesson-as-counted = wie gezählt
lesson-round = Runde
lesson-missing = fehlend
lesson-kept-on-this-computer-only = nur auf diesem Rechner gespeichert
lesson-your-piece = Dein Teil
lesson-why = Warum
lesson-ask-again = Noch einmal fragen
lesson-delete-all = Alle löschen
lesson-take-another-prediction-from-another = Noch eine Vorhersage annehmen, etwa von jemand anderem
lesson-delete-every-kept-prediction-of-all = Alle gespeicherten Vorhersagen aller Schritte löschen
lesson-the-rounds-to-work-are-on-the-steps = Die Runden dazu stehen auf der gedruckten Seite des Schritts.
lesson-there-are-no-rounds-yet = Es gibt noch keine Runden.
lesson-own-piece = Hier entspannt sich dein eigenes Teil, Masche für Masche: was seine Zahlen aus dem Stoff machen, mit Rüschen und Ecken. Zeig auf eine Runde, um zu sehen, was sie tut; es ist in jedem Bereich dieselbe.
lesson-no-ruffles = Keine Runde gewinnt mehr, als flach liegt: Nichts schlägt Rüschen.
lesson-ruffles = { $n ->
        [one] Eine Runde gewinnt mehr, als flach liegt: Sie schlägt Rüschen.
       *[other] { $n } Runden gewinnen mehr, als flach liegt: Sie schlagen Rüschen.
    }
lesson-round-told = Rd { $round } gewinnt { $gained }, wo { $flat } flach liegen: { $bend }. Vom Anfang bis hier { $mean } je Runde, wo { $meanflat } flach liegen: { $meanbend }.
lesson-round-bends = Rd { $round }: { $bend }; vom Anfang bis hier: { $meanbend }.
lesson-fabric-note = Der Stoff darf sich hier durchdringen; Pappen und zugezogene Fäden halten nicht.
lesson-next = Weiter
lesson-print = Drucken
lesson-print-or-save-the-lesson = Die Lektion drucken oder speichern
lesson-continue = Fortsetzen
lesson-step-step-name-predicted = Schritt { $step }: { $name }, vorhergesagt
lesson-step-step-name = Schritt { $step }: { $name }
lesson-missing-angle = Fehlender Winkel
lesson-added-up-to-rnd-round = summiert bis Rd { $round }
lesson-added-over-all-rounds = alle Runden
lesson-added-up-after-your-prediction = Summe nach deiner Vorhersage
lesson-of-720-which-close-a-ball = von 720°, die eine Kugel schließen
lesson-the-hatched-part-is-what-closing-the = Der schraffierte Teil ist, was das Schließen der letzten Runde beiträgt.
lesson-left-of-flat-there-is-too-much-fabric = Links von flach ist zu viel Stoff, er schlägt Rüschen. Rechts von flach ist zu wenig, er wölbt sich.
lesson-missing-of = Fehlender Winkel: { $sum } von 720°
lesson-more-fabric-than-lies-flat = mehr Stoff, als flach liegt
lesson-nearly-flat = fast flach
lesson-on-the-way-to-a-ball = auf dem Weg zur Kugel
lesson-a-closed-ball = eine geschlossene Kugel
lesson-missing-words = Fehlender Winkel: { $words }
lesson-half-a-ball = halbe Kugel
lesson-closed-ball = Kugel

## The Make stage

make-back-to-round-back = Zurück zu Runde { $back }
make-keep-my-place = Hier weitermachen
make-keep-what-is-worked-as-it-is = Das Gehäkelte lassen, wie es ist
make-rip-back-to-where-it-differs-from-the = Auftrennen bis dahin, wo es vom Plan abweicht
make-begin-with-yarn-yarn = Mit Garn { $yarn } beginnen.
make-from-here-on-in-yarn-yarn = Ab hier mit Garn { $yarn }.
make-change-to-yarn-yarn-in-the-last-stitch = In der letzten Masche dieser Runde zu Garn { $yarn } wechseln.
make-work-on-name-key-goes-to-the-next = { $name } häkeln ({ $key }: das nächste)
make-has-no-plan = hat keinen Plan
make-finished = fertig
make-to-be-stuffed = zu füllen
make-to-be-closed = zu schließen
make-not-started = nicht begonnen
make-round-round-of-last = Runde { $round } von { $last }
make-rows-first-last-of-all-of-this-round = Zeilen { $first }–{ $last } von { $all } dieser Runde
make-of-last = von { $last }
make-go-to-a-round = Zu einer Runde gehen
make-round = Runde
make-round-to-go-to = Runde, zu der es geht
make-round-number-stitch-at-of-count-word = Runde { $number }, Masche { $at } von { $count }: { $word }
make-preparing-size = { $size } wird vorbereitet …
make-name-cannot-be-made-as-it-is = { $name } lässt sich so nicht häkeln
make-nothing-can-be-made-in-size = Nichts lässt sich häkeln: { $size }
make-shape-it = Formen
make-see-the-sizes = Größen ansehen
make-size-being-made-size-state = Größe in Arbeit: { $size }, { $state }
make-title-choose-the-size-to-make-key-goes = { $title }: Größe zum Häkeln wählen ({ $key }: die nächste)
make-choose-the-size-to-make-key-goes-to = Größe zum Häkeln wählen ({ $key }: die nächste)
make-make-size-state = Häkeln: { $size }, { $state }
make-rounds-of-piece-click-one-to-go-to-it = Runden von { $piece }; ein Klick führt hin
make-continue-from-round-r = Ab Runde { $r } weiterhäkeln
make-times-to-go = noch { $times }
make-then-stitch = dann { $stitch }
make-made-of-count = { $made } von { $count }
make-repeat-repeat-of-repeats = Wiederholung { $repeat } von { $repeats }
make-note-on-round-round-key = Notiz zu Runde { $round } ({ $key })
make-note-on = Notiz zu Runde { $round }
make-a-note-on-this-round-enter-or-esc = Eine Notiz zu dieser Runde; Eingabe oder Esc beendet sie
make-about-low-high-g-of-stuffing-round = Etwa { $low }–{ $high } g Füllwatte. Runde { $round } ist gehäkelt.
make-all-rounds-rounds-are-worked = { $rounds ->
        [one] Die eine Runde ist
       *[other] Alle { $rounds } Runden sind
    } gehäkelt
make-everything = Alles
make-what-is-finished = Fertig: { $what }
make-what-is-finished-in-size = Fertig: { $what }, { $size }
make-what-took-time = { $what }: { $time }.
make-all-copies = Alle { $copies }
make-made-of-copies-finished-left-left = { $made } von { $copies } fertig; noch { $left }.
make-something-to-lay-in = etwas einzulegen
make-it-is-in = Eingelegt
make-round-is-worked = Runde { $round } ist gehäkelt.
make-from-this-stitch-on-in-yarn = Ab dieser Masche in Garn { $yarn }.
make-finish-this-stitch-with-yarn = Diese Masche mit Garn { $yarn } beenden.
make-in-stitches-yarn = In { $left } Maschen: Garn { $yarn }.
make-the-stuffing-is-in = Gefüllt
make-it-is-fastened-off = Vernäht
make-on-to-name = Weiter mit { $name }
make-pace-st-a-minute = { $pace } M je Minute
make-left = übrig
make-your-pace = dein Tempo
make-usual-pace = übliches Tempo
make-whose-pace = { $whose }, { $pace }
make-paused = Pause
make-only-five-minutes-of-a-pause-count-the = Von einer Pause zählen nur fünf Minuten; die nächste Masche beendet sie
make-worked = gehäkelt
make-time-between-two-steps-counts-five = Es zählt die Zeit zwischen zwei Schritten, von einer Pause höchstens fünf Minuten
make-about-time = etwa { $time }
size-started = begonnen
size-made-of-copies-finished = { $made } von { $copies } fertig
size-as-designed = Wie entworfen
size-as-designed-within = wie entworfen
size-named-within = Größe { $name }
size-named = Größe { $name }
make-sew-on = { $copies ->
        [one] { $piece } ist
       *[other] Jedes von { $copies } { $piece } ist
    } an seinem Rand mit { $edge ->
        [one] 1 Masche
       *[other] { $edge } Maschen
    } offen: dort annähen.

## The Sheet stage

sheet-pages = { $n ->
        [one] eine Seite
       *[other] { $n } Seiten
    }
sheet-preparing = wird vorbereitet …
sheet-preparing-text = Wird vorbereitet …
sheet-sheet = Blatt
sheet-the-sheet-cannot-be-made-error = Das Blatt lässt sich nicht erstellen: { $error }.
sheet-the-sheet-as = Blatt als
sheet-larger-pages = Seiten größer
sheet-smaller-pages = Seiten kleiner
sheet-layout = Layout
sheet-your-details = Deine Angaben
sheet-export = Exportieren
sheet-the-ending-of-the-file-name-decides = Die Endung des Dateinamens entscheidet: .pdf zum Drucken, .html für den Browser, .md, .txt, .png für ein Bild der ersten Seite, .srt oder .vtt für Untertitel.
sheet-paper = Papier
sheet-size-of-the-page = Größe der Seite
sheet-a4 = A4
sheet-letter = Letter
sheet-columns = Spalten
sheet-one-with-pictures-beside-it-or-two-on = Eine mit Bildern daneben oder zwei auf weniger Seiten
sheet-one = eine
sheet-two = zwei
sheet-single-crochet = Feste Masche
sheet-its-symbol-in-the-charts-both-are-in = Ihr Zeichen in den Häkelschriften; beide sind üblich
sheet-page-page-of-pages = Seite { $page } von { $pages }
sheet-selects-this-round-in-every-view = Wählt diese Runde in allen Ansichten
sheet-words = Wörter
sheet-whose-terms-and-which-house-style-the = In welchen Begriffen und welchem Hausstil die Anleitung steht
sheet-terms = Begriffe
sheet-not-yet-checked-by-a-native-reader-the = Noch von niemandem mit dieser Muttersprache geprüft; das Blatt sagt es auch.
sheet-house-style = Hausstil

## The gauge book

book-from-the-gauge-book = Aus dem Maschenprobenbuch
book-no-match = Keine Treffer.
book-show-more-more-of-all = { $more } weitere von { $all } zeigen
book-search-by-yarn = Nach Garn suchen
book-search-the-gauge-book = Maschenprobenbuch durchsuchen
book-hand-stitches-sts-rounds-rnds-to = { $hand } · { $stitches } M, { $rounds } Rd auf { $length }
book-measured-on = gemessen { $day }
book-gauge-of-title-learned = Maschenprobe: { $title }{ $learned }
book-delete-title = { $title } löschen
book-restore-title = { $title } wiederherstellen
book-delete-it-from-the-gauge-book = Aus dem Maschenprobenbuch löschen
book-title-deleted = { $title }, gelöscht
book-restore = Wiederherstellen
book-hand-deleted = { $hand } · gelöscht

## The Sizes stage

sizes-beside-the-sizes = Neben den Größen
sizes-as-designed = wie entworfen
sizes-of-piece = von { $piece }
sizes-sizes = Größen
sizes-preparing = wird berechnet …
sizes-add-a-size = Größe hinzufügen
sizes-the-same-shape-at-another-height-width = Dieselbe Form in anderer Höhe, Breite oder Maschenprobe

## The sample that is measured

sample-crochet-this-piece-as-written-measure = Dieses Teil wie geschrieben häkeln, messen und wiegen; künftige Prognosen richten sich danach. Was nicht gemessen ist, bleibt leer.
sample-unstuffed = Ungefüllt
sample-stitches-why = Wie viele, und wie breit sie im ungefüllten Stoff sind: je mehr, desto besser
sample-stitches = Maschen
sample-rounds-why = Wie viele, und wie lang sie im ungefüllten Stoff sind. Das Teil flach drücken: über den Anfang und die andere Seite hinauf misst man doppelt so viele
sample-rounds = Runden
sample-stuffed = Gefüllt
sample-measured-on-the-stuffed-piece = Am gefüllten Teil gemessen
sample-around-the-widest = Rundum am breitesten
sample-height = Höhe
sample-a-tape-right-around-the-stuffed-piece = Ein Maßband der Länge nach ganz um das gefüllte Teil, über Anfang und Ende
sample-over-both-ends = Über beide Enden
sample-yarn = Garn
sample-before-the-first-stitch = Vor der ersten Masche
sample-after-the-last = Nach der letzten
sample-also-measured-pieces = Auch gemessen: { $pieces }.
sample-what-you-measure-on-names-counts-too = Auch was an { $names } gemessen wird, zählt.
sample-what-counted = { $what } gezählt
sample-what-measured = { $what } gemessen
sample-of-measured = { $what }, gemessen
sample-weight-of-the-yarn-you-have-ball = Gewicht des vorhandenen Garns, samt Knäuel
sample-yarn-when = Garn, { $when }
sample-unraveled-round = Aufgetrennte Runde
sample-which-round-and-the-length-of-its-yarn = Welche Runde, und die Länge ihres Garns
sample-round-unraveled = Runde, aufgetrennt
sample-yarn-of-the-round = Garn der Runde
sample-results = Ergebnisse
sample-forecast-and-measurements = Prognose und Messung
sample-forecast = Prognose
sample-now = jetzt
sample-measured = gemessen
sample-use-this-gauge = Diese Maschenprobe verwenden
sample-gauge-book = Maschenprobenbuch
sample-saves-it-for-yarn-on-this-hook-for = Speichert es für { $yarn } mit dieser Nadel, für alle Projekte.
sample-maker-why = Wer so häkelt; leer lassen, wenn es nur eine Person gibt
sample-maker = Wer häkelt
sample-save-in-the-gauge-book = Im Maschenprobenbuch speichern
sample-not-measured = { $value }, nicht gemessen
sample-before = Vor der Probe { $value }
sample-these-measurements-do-not-show-it-it = Diese Messungen zeigen es nicht: Es bleibt, wie es war
quantity-stiffness-short = Steife längs/rundum
sample-compared = { $what }: Prognose { $forecast }, jetzt { $now }, gemessen { $measured }

## Seams

seam-a-seam-joins-two-pieces-a-cap-and-a = Eine Naht verbindet zwei Teile: Hut und Eichel, Kopf und Körper. Ein zweites Teil lässt sich oben mit dem Pfeil am Namen anlegen.
seam-no-seams-yet-a-seam-makes-two-pieces = Noch keine Nähte. Eine Naht macht zwei Teile passend: Masche an Masche genäht oder eines mit Spielraum über dem anderen.
seam-add-a-seam = Naht hinzufügen
seam-numbered = Naht { $number }
seam-seam-number-first = Naht { $number }, erstes
seam-seam-number-second = Naht { $number }, zweites
seam-the-two-are = Die beiden sind
seam-sewn-stitch-to-stitch-or-the-second = Masche an Masche genäht, oder das zweite über dem ersten
seam-seam-number-is = Naht { $number } ist
seam-sewn = genäht
seam-slipped-over = übergezogen
seam-may-change = Anpassen
seam-which-of-the-two-is-fitted-to-the = Welches der beiden an das andere angepasst wird
seam-seam-number-may-change = Naht { $number } anpassen
seam-either = eines
seam-first = erstes
seam-second = zweites
seam-match-seam-number = Naht { $number } angleichen
seam-match-them = Angleichen
seam-remove-seam-number = Naht { $number } entfernen
seam-remove = Entfernen
seam-how-much-wider-the-second-is-than-the = Wie viel breiter das zweite ist als das erste
seam-room-to-spare = Spielraum
seam-room-of-seam-number = Spielraum der Naht { $number }
seam-none = keiner
seam-whether-the-second-is-stuffed-when = Ob das zweite gefüllt ist, wenn sie sich treffen; ein Hut nicht, ein Deckel vielleicht
seam-the-second-is-stuffed = Das zweite ist gefüllt
seam-open-start = offener Anfang
seam-open-end = offenes Ende
seam-round = Runde
seam-name-at-where = { $name }: { $place }
seam-name-at-round = { $name }: Runde

## Another yarn

swap-count-a-swatch-of-the-other-yarn = Eine Probe im anderen Garn zählen, in Runden, rechte Seite außen, ungefüllt.
swap-stitches = Maschen
swap-other-yarn-stitches = Anderes Garn, Maschen
swap-rounds = Runden
swap-other-yarn-rounds = Anderes Garn, Runden
swap-over = auf
swap-the-length-both-were-counted-over = Die Länge, auf der beides gezählt ist
swap-other-yarn-over = Anderes Garn, auf
swap-hook = Nadel
swap-shaft-diameter = Schaftdurchmesser
swap-other-yarn-hook = Anderes Garn, Nadel
swap-as-counted-on-the-swatch = Wie an der Probe gezählt
swap-side-by-side = Nebeneinander
swap-preparing = Wird berechnet …
swap-now = jetzt
swap-same-rounds = gleiche Runden
swap-same-size = gleiche Größe
swap-row-rounds = Runden
swap-row-stitches = Maschen
swap-meters = Meter
swap-minutes = Minuten
swap-use-it-for-the-same-rounds = Für gleiche Runden nehmen
swap-use-it-for-the-same-size = Für gleiche Größe nehmen
column-size = Größe
column-sized-by = Größe nach
column-finished = Fertig
column-scale = Faktor
column-rounds = Runden
column-stitches = Maschen
column-yarn = Garn
column-stuffing = Füllung
column-time = Zeit
sizes-no-other-sizes-yet-add-one-then-say = Noch keine anderen Größen. Eine hinzufügen und Höhe oder Breite angeben: Ihre Runden werden aus dem Umriss neu geplant, nie vervielfacht.
sizes-the-outline = der Umriss
sizes-name-of-size-number = Name von Größe { $number }
sizes-by-height = Höhe
sizes-height = Höhe
sizes-by-width = Breite
sizes-width = Breite
sizes-scale-factor = Faktor
sizes-gauge-same-size = Probe, gleiche Größe
sizes-gauge-same-rounds = Probe, gleiche Runden
sizes-seam-with = Naht mit { $piece }
sizes-size-number-sized-by-now = Größe { $number } nach { $now }
sizes-what-of-size-number = { $what }, Größe { $number }
sizes-factor-of-size-number = Faktor, Größe { $number }
sizes-stitches = Maschen
sizes-rounds = Runden
sizes-at-the-seam = an der Naht
sizes-the-piece = das Teil
sizes-why-name-cannot-be-made = Warum { $name } nicht geht
sizes-this-is-as-near-as-whole-stitches-come = Näher kommen ganze Maschen nicht.
sizes-notes-on-name = Hinweise zu { $name }
sizes-minutes-min = { $minutes } min
sizes-more-about-size-number = Mehr zu Größe { $number }
sizes-necks-lips-and-openings-have-at-least = Hälse, Ränder und Öffnungen haben mindestens so viele Maschen wie im Teil
sizes-keep-necks-and-openings = Hälse und Öffnungen erhalten
sizes-repeats-why = So viele Wiederholungen je Runde wie das Teil und dieselbe schlichte Zone
sizes-keep-the-same-repeats = Gleiche Wiederholungen behalten
sizes-make-the-piece-this-size = Teil in dieser Größe
sizes-remove-this-size = Diese Größe entfernen
sizes-necks-repeats-use-this-size-remove-it = Hälse, Wiederholungen, diese Größe nehmen, entfernen

## A toy to match

match-measure-one-place-of-a-finished-toy-of = Eine Stelle einer fertigen Figur messen, aus dieser oder einer anderen Anleitung: Dieses Teil wird so groß geplant.
match-the-toy = Die Figur
match-column-toy = die Figur
match-on-the-stuffed-toy-with-a-ruler-or-a = An der gefüllten Figur, mit Lineal oder Maßband
match-it-measures = Sie misst
match-toy-measures = Figur misst
match-preparing = Wird berechnet …
match-one-measurement-is-enough-the-rest = Ein Maß genügt: Der Rest folgt aus der Form
match-measured = Gemessen
match-toy-measured = Figur gemessen
match-height = Höhe
match-width = Breite
match-around = rundum
match-at-its-widest-or-at-the-top-of-a-round = An der breitesten Stelle oder an der Oberkante einer Runde dieses Teils, wie entworfen
match-measured-at = Gemessen an
match-the-widest = breiteste Stelle
match-round = Runde
match-toy-measured-at = Figur gemessen an
match-toy-measured-at-round = Figur gemessen an Runde
match-scale-factor = Faktor
match-as-designed = wie entworfen
match-matched = angeglichen
match-size = Größe
match-rounds = Runden
match-stitches = Maschen
match-of-this-piece-as-designed = dieses Teils wie entworfen
match-use-it = Verwenden
match-what-the-size-is-to-be-called-in-the = Wie die Größe in der Tabelle heißt
match-name = Name
match-name-of-the-matched-size = Name der angeglichenen Größe
match-add-as-a-size = Als Größe hinzufügen
match-make-the-piece-this-size = Teil so groß machen
match-a-size-named-name-is-in-the-table = Eine Größe { $name } steht in der Tabelle.
match-the-table-is-full-remove-a-size-to-add = Die Tabelle ist voll; zum Hinzufügen eine Größe entfernen.

## What a sample tells

quantity-stitch-width = Maschenbreite
quantity-round-height = Rundenhöhe
quantity-firmness = Festigkeit
quantity-stiffness = Steife längs zu rundum
quantity-yarn = Garn je Masche

## The results of simplicity

results-stitches-likely-off-the-outline-by = Maschen neben dem Umriss nach verschiedenen Zeilen
results-different-lines = verschiedene Zeilen
results-likely-st-off = wohl M daneben

## A ball to check the gauge by

ball-increase-by-6-from-a-ring-of-6-work = Aus einem Fadenring mit 6 um je 6 zunehmen, gerade Runden, um je 6 zurück auf 6; gefüllt wie dieses Teil.
ball-stitches-around = { $n } M rundum
ball-ball-stitches-around = Kugel, Maschen rundum
ball-even-rounds = gerade Runden
ball-even-rounds-name = Kugel, gerade Runden
ball-from-the-ring-to-the-close-with-the = Vom Fadenring bis zum Schluss, die Kugel gefüllt
ball-measured-height = Gemessene Höhe
ball-ball-height = Kugel, Höhe
ball-across-the-even-rounds = Quer über die geraden Runden
ball-measured-width = Gemessene Breite
ball-ball-width = Kugel, Breite
ball-this-gauge-forecasts-height-width-high = Diese Maschenprobe ergibt { $height } × { $width } hoch × breit.
ball-forecast-measure-yours-and-type-both = { $forecast } Miss deine und tippe beides.
ball-forecast-yours-agrees-with-this-round = { $forecast } Deine passt zu dieser Rundenhöhe.
ball-forecast-yours-has-the-shape-of-rounds = { $forecast } Deine hat die Form von Runden, die { $agrees } hoch sind; diese Probe sagt { $now }.
ball-use-rounds-rounds-to-length = { $rounds } Runden auf { $length } verwenden

## The bend strip

strip-bend-strip = Krümmungsstreifen
strip-stitches-per-round = Maschen je Runde
strip-added = Zunahme
strip-decreased = Abnahme
strip-change-of-slope = Änderung der Neigung
strip-lies-flat-stitches = liegt flach, +{ $stitches }
strip-sharpest-change-of-slope-degrees-in = stärkste Änderung, { $degrees }° in Rd { $round }

## The stuffed body

body-stuffed-body = Gefüllter Körper
body-cut-open = Aufschneiden
body-take-away-the-front-half-fabric-and = Die vordere Hälfte wegnehmen: Stoff und Füllung
body-relax = Entspannen
body-relax-every-stitch = Jede Masche entspannen
body-let-every-stitch-find-its-place-frills = Jede Masche findet ihren Platz: Rüschen wellen sich, gestapelte Zunahmen bilden Ecken
body-export = Exportieren …
body-export-the-body-as-a-picture = Körper als Bild exportieren
body-turn-back = Zurückdrehen
body-turn-the-body-back = Körper zurückdrehen
body-as-it-was-at-first-a-double-click-does = Wie am Anfang; Doppelklick tut das auch
body-body = Körper
body-drag-to-turn = zum Drehen ziehen
body-rnd-round-count-st = Rd { $round } · { $count } M

## The card of four leaves

card-size-yarn-stuffing-time-and-fit = Größe, Garn, Füllung, Zeit und Passform
card-what-to-know-before-you-crochet-it = Was vor dem Häkeln zu wissen ist
card-what-every-round-must-keep-to = Woran sich jede Runde hält
card-the-results-to-choose-from-and-what = Die Ergebnisse zur Auswahl, und was jedes kostet und spart
card-checks-rules-simplicity = Hinweise, Regeln, Einfachheit

## Measurements of the piece

measured-high-wide-deep = hoch × breit × tief
measured-h-w-d = h × b × t
measured-high-wide = hoch × breit
measured-h-w = h × b
measured-minutes = { $n } min
measured-measurements = Fakten
measured-stuffed = { $how } gefüllt
measured-rounds = Runden
measured-stitches = Maschen
measured-stuffing = Füllung
measured-time = Zeit
measured-and-more-more-yarn-is-estimated-20 = und { $more } mehr; Garn geschätzt, ±20 %
measured-estimated-yarn-20-stuffing-and-time-by = geschätzt: Garn ±20 %, Füllung und Zeit nach Faustregeln
measured-yarn-letter-name = Garn { $letter }, { $name }
measured-change-its-name-color-or-length = Name, Farbe oder Lauflänge ändern
measured-fit = Genau wie geschrieben gehäkelt liegt das fertige Teil im Mittel { $mean } Maschen neben der gewünschten Linie, höchstens { $most }. Hände unterscheiden sich in Maschenprobe, Zug und Füllung: Zu erwarten sind { $likely }.
measured-fit-to-outline = Passform
measured-likely-st = { $likely } M
measured-as-written-fit-by-hand-likely = geschrieben { $fit }, von Hand wohl
measured-by-hand-likely = von Hand wohl
measured-snug = ¼ knapp
measured-1-st-loose = 1 M lose
measured-unit-high-wide = { $symbol } hoch × breit
measured-unit-stuffing = { $unit } Füllung
measured-word-rounds = Runden
measured-st = M
measured-to-make = Arbeit
measured-st-off = M daneben

## The gauge card

gauge-gauge = Probe
gauge-more = Mehr
gauge-more-about-the-fabric = Mehr zum Stoff
gauge-a-ball-you-made-to-check-it-by-spiral = Eine Kugel zur Kontrolle, Spirale oder geschlossen, andere Proben, Füllung
gauge-stitches = M
gauge-over = auf
gauge-stitches-over = Maschen auf
gauge-rounds = Rd
gauge-rounds-over = Runden auf
gauge-count-it-in-the-spiral-rounds-1-higher = In der Spirale zählen: 1 % höhere Runden machen eine Kugel 2 % höher.
gauge-hook = Nadel
gauge-a-smaller-hook = Eine dünnere Nadel
gauge-a-larger-hook = Eine dickere Nadel
gauge-name-the-swatch-stays-as-counted = { $name }; die Probe bleibt wie gezählt
gauge-name-of-the-piece = { $name } des Teils
gauge-firmness = Festigkeit
simplicity-default = üblich
simplicity-faithful = treu
simplicity-simple = einfach
simplicity-default-button = Üblich
gauge-the-simplest-rounds-whose-likely-fit = Die einfachsten Runden, deren Passform keine Hand vom Besten unterscheidet
gauge-likely-off = wohl { $likely } M daneben
gauge-given-by-its-rounds = nach Runden gegeben
gauge-in-one-repeat = { $share } % volle Rapporte
gauge-lines-different-lines = { $lines } verschiedene Zeilen

## The key of the board

legend-wanted = gewünscht
legend-forecast = Prognose
legend-selected-round = gewählte Runde
legend-off-the-outline = neben dem Umriss
legend-closing-thread = Zugfaden
legend-seam = Naht
legend-card-inside = Pappe innen
legend-plain = schlicht
legend-key = Legende

## More about the fabric

fabric-a-ball-you-made = Eine Kugel von dir
fabric-working = Häkeln
fabric-swatches-in-other-stitches = Proben in anderen Maschen
fabric-heights-from-memory-marked-assumed = Angenommene Höhen machen eine Prognose unsicherer. Eine Probe in Runden klärt sie.
fabric-stuffing-grams-per-liter = Füllwatte, Gramm je Liter
fabric-stuffing-per-liter-name = Füllwatte je Liter, { $name }
fabric-common-practice-no-source-weigh-what-a = Üblich, ohne Quelle. Eine Probe wiegen, um die eigene zu kennen.
fabric-a-spiral-has-no-seam-but-climbs-joined = Eine Spirale hat keine Naht, steigt aber; geschlossene Runden enden am Anfang, mit sichtbarer Naht
fabric-rounds = Runden
fabric-spiral = Spirale
fabric-joined = geschlossen
fabric-whether-the-chain-a-joined-round = Ob die Luftmaschen am Anfang als erste Masche zählen
fabric-the-chain-counts-as-a-stitch = Anfangs-Lm zählen als Masche
fabric-the-hand-that-holds-the-hook-a-left = Die Hand mit der Nadel: eine linke häkelt im Uhrzeigersinn
fabric-hand = Hand
fabric-right = rechts
fabric-left = links
fabric-yarn-under-makes-a-tighter-crossed = Faden von unten gibt eine festere, gekreuzte Masche. Nur vermerkt: deine Probe hat die Höhe schon
fabric-single-crochet = Feste Masche
fabric-yarn-over = Umschlag
fabric-yarn-under = von unten
fabric-half-double = Halbe Stäbchen
fabric-double = Stäbchen
fabric-a-swatch-in-this-kind-of-stitch-worked = Eine Probe in dieser Maschenart, in Runden gehäkelt und gezählt wie die in festen Maschen
fabric-counted = Gezählt …
fabric-name-count-a-swatch = { $name }, Probe zählen
fabric-give-the-stitches-and-rounds-of-a = Maschen und Runden einer Probe angeben
fabric-times-as-high-assumed = { $times }-mal so hoch, angenommen
fabric-name-no-swatch = { $name }, keine Probe
fabric-back-to-the-assumed-height = Zurück zur angenommenen Höhe
fabric-name-stitches = { $name }, Maschen
fabric-suffix-stitches = M
fabric-suffix-rounds = Rd
fabric-name-rounds = { $name }, Runden
fabric-name-over = { $name }, auf
fabric-how-high-a-round-is-that-is-worked = Wie hoch eine Runde in nur einem Maschenglied ist, verglichen mit beiden
fabric-one-loop-only = Nur ein Maschenglied
fabric-times-as-high = × so hoch
fabric-one-loop-only-height = Nur ein Maschenglied, Höhe
fabric-one-loop-only-not-measured = Nur ein Maschenglied, nicht gemessen
fabric-assumed = angenommen

## Checks

checks-no-problems-found = Keine Probleme gefunden.
checks-select-these-rounds = Diese Runden wählen

## Rules

rules-ends = Enden
rules-counts = Maschenzahlen
rules-placement = Verteilung
rules-plain-rounds = Schlichte Runden
rules-start = Anfang
rules-how-many-stitches-the-foundation-ring = Mit wie vielen Maschen der Fadenring beginnt: weniger ergeben eine feinere Spitze, mehr einen flacheren Anfang
rules-foundation-ring = Fadenring
rules-this-piece-starts-open = dieses Teil beginnt offen
rules-an-oval-starts-on-a-chain = ein Oval beginnt auf Luftmaschen
rules-automatic = automatisch
rules-how-many-stitches-are-left-to-close = Wie viele Maschen zum Schließen bleiben: je weniger, desto kleiner der Schluss
rules-last-round = Letzte Runde
rules-this-piece-ends-open = dieses Teil endet offen
rules-fewest-stitches-a-round-in-the-middle = Mindestzahl der Maschen in der Mitte: Durch einen Hals müssen Finger und Füllung passen
rules-smallest-neck = Engster Hals
rules-counts-that-share-a-divisor-keep-one = Zahlen mit gemeinsamem Teiler behalten eine Wiederholung und lassen ein Muster ohne Versatz umlaufen
rules-in-multiples-of = Vielfache von
rules-any-count = jede Zahl
rules-most-stitches-a-round-may-gain-or-lose = Höchstzahl der Maschen, die eine Runde zu- oder abnimmt: kleine Schritte fallen weniger auf
rules-largest-change = Größte Änderung
rules-off = aus
rules-the-second-half-repeats-the-first = Die zweite Hälfte wiederholt die erste rückwärts, nur eine ist zu lernen
rules-both-halves-alike = Beide Hälften gleich
rules-more-stitches-than-lie-flat-make-the = Mehr Maschen, als flach liegen, werfen Falten: ein Rock, ein welliger Rand. Ohne dies nimmt keine Runde so viele zu
rules-rounds-may-gain-more-than-lies-flat = Runden dürfen mehr zunehmen, als flach liegt
rules-plain-rounds-come-together-so-that = Schlichte Runden stehen beisammen, lange Strecken brauchen kein Zählen
rules-plain-rounds-together = Schlichte Runden beisammen
rules-staggered-increases-do-not-show = Versetzte Zunahmen fallen nicht auf; gestapelte bilden Ecken, wenn man sie will
rules-increases = Zunahmen
rules-staggered = versetzt
rules-stacked = gestapelt
rules-how-far-each-round-leans-against-the = Wie weit sich jede Runde gegen die darunter neigt, in Maschen: an einer Probe in Runden messen. Angenommen ist 0,17
rules-spiral-drift = Spiralversatz
rules-an-embroidered-face-or-eyes-sit-best = Ein gesticktes Gesicht oder Augen sitzen am besten, wo nicht zu- oder abgenommen wird
rules-plain-zone-number = Schlichte Zone { $number }
rules-plain-zone-number-first-round = Schlichte Zone { $number }, erste Runde
rules-plain-zone-number-last-round = Schlichte Zone { $number }, letzte Runde
rules-to = bis
rules-remove-plain-zone-number = Schlichte Zone { $number } entfernen
rules-let-these-rounds-be-shaped = Diese Runden formen lassen
rules-add-a-plain-zone = Schlichte Zone hinzufügen
rules-add-one-from-round-r = Hinzufügen ab Runde { $r }
rules-select-a-round-first = erst eine Runde wählen
rules-worked-along-both-sides-of-a-chain-two = Um eine Luftmaschenkette gehäkelt: zwei halbe Runden und zwei gerade Seiten dieser Länge. 0 ist rund
rules-oval-start-straight-side = Ovaler Anfang, gerade Seite
rules-round = rund
rules-start-from-the-other-end = Vom anderen Ende beginnen
rules-work-the-piece-the-other-way-up-pins = Das Teil andersherum häkeln; Festgehaltenes, schlichte Zonen und Garne gehen mit
results-no-results-while-the-outline-cannot-be = Keine Ergebnisse, solange der Umriss nicht geht: { $error }.
results-preparing-the-results = Ergebnisse werden berechnet …
results-the-results-come-when-you-stop = Die Ergebnisse kommen, wenn das Ziehen endet
results-likely = wohl
results-st-off = M daneben
results-lines = Zeilen
results-repeats = Wdh.
results-result-name = Ergebnis { $name }
results-use-this-result = Dieses Ergebnis verwenden
results-rounds-name = Runden, { $name }
results-preparing = Wird berechnet …

## The round bars

bars-round-bars = Rundenbalken
bars-round-pinned = Runde { $round }: { $words } [{ $count }], Garn { $yarn }, festgehalten
bars-round = Runde { $round }: { $words } [{ $count }], Garn { $yarn }
bars-end-of-round-number = Ende von Runde { $number }
bars-change-yarn = Garn wechseln
bars-change-yarn-from-this-round-on = Ab dieser Runde das Garn wechseln
bars-choices-for-this-round = Optionen für diese Runde
bars-stitch-loop-shaping-and-yarn-from-this = Maschenart, Maschenglied, Formung und Garn ab dieser Runde
bars-increase = Zunahme
bars-decrease = Abnahme
bars-one-cell-one-stitch-drag-an-end-to-pin = ein Feld = eine Masche; zum Festhalten am Ende ziehen
bars-one-cell-one-stitch = ein Feld = eine Masche
bars-foundation-chain = Anfangskette
bars-stuff-now-mass = Jetzt füllen, { $mass }

## The card of a round

round-round-round = Runde { $round }
round-stitch-from-here-on = Maschenart ab hier
round-this-round-worked-into = Diese Runde häkeln in
round-yarn-from-here-on = Garn ab hier
round-pinned-at-count-stitches = Bei { $count } Maschen festgehalten
round-pin-at-count-stitches = Bei { $count } Maschen festhalten
round-no-increases-or-decreases-from-this = Ab dieser Runde so viele Runden lang keine Zu- oder Abnahmen ({ $key } für diese)
round-plain-for = Schlicht für
round-off = aus
round-plain-rounds = Schlichte Runden
round-single = feste M
round-half-double = halbe Stb
round-double = Stäbchen
round-both-loops = beide
round-front-only = vorderes
round-back-only = hinteres
round-worked-into = Gehäkelt in
round-yarn-from-here-on-letter-name = Garn ab hier: { $letter } { $name }
round-another-yarn-from-here-on = Anderes Garn ab hier

## The outline board

board-rnd-round = Rd { $round }
board-finished-oval-width-depth = fertiges Oval, Breite × Tiefe
board-finished = fertig
board-width = Breite
board-height = Höhe
board-name-of-the-finished-piece-click-to = { $name } des fertigen Teils; zum Tippen klicken
board-held-by-thread = Von einem Zugfaden gehalten
board-held-by-a-seam = Von einer Naht gehalten
board-a-card-lies-from-here-to-the-next-knot = Von hier bis zum nächsten Stützpunkt liegt Pappe
board-held-by-nothing = Von nichts gehalten
board-fabric-alone-holds-no-corner = Stoff allein hält keine Ecke
board-a-thread-pulled-through-that-round-and = Ein Faden, durch die Runde gezogen und geknotet
board-sewn-to-another-piece-there = Dort an ein anderes Teil genäht
board-card-from-here-to-the-next-knot = Pappe von hier bis zum nächsten Stützpunkt
board-stiff-card-or-plastic-inside-keeps-the = Steife Pappe oder Kunststoff innen hält den Stoff dort eben
board-knot = Stützpunkt { $knot }
board-knot-left = Stützpunkt { $knot }, linke Seite
board-make-it-a-corner = Zur Ecke machen
board-make-it-a-pointed-tip = Zur Spitze machen
board-make-it-smooth = Glätten
board-open-this-end = Dieses Ende öffnen
board-close-this-end = Dieses Ende schließen
board-move-or-scale-the-picture = Bild verschieben oder skalieren
board-add-a-knot-here = Stützpunkt hier hinzufügen
board-stiff-card-or-plastic-inside-keeps = Steife Pappe oder Kunststoff innen hält den Stoff dort eben
board-card-between-these-two-knots = Pappe zwischen diesen beiden Stützpunkten
board-unpin-round-round = Runde { $round } freigeben
board-pin-round-round-at-count-stitches = Runde { $round } bei { $count } Maschen festhalten
board-pull-a-thread-sew-it-or-put-a-card-in = Faden ziehen, annähen oder Pappe einlegen
board-fabric-this-flat-wrinkles-a-rounder = so flacher Stoff knittert; ein runderer Umriss hält
board-put-a-card-in-or-make-the-side-steeper = Pappe einlegen oder die Seite steiler machen
board-round-the-outline-or-hold-it-there = Umriss runden oder dort halten
board-ease-the-outline-or-pin-more-stitches = Umriss sanfter, oder mehr Maschen festhalten
board-rnd = Rd { $round }
board-rnds = Rd { $first }–{ $last }
board-zone-wrinkles = knittert, { $off }
board-zone-unheld = haltlos, { $off }
board-several-knots-selected = { $several } Stützpunkte gewählt
board-knot-knot-selected = Stützpunkt { $knot } gewählt
board-drag-a-knot-the-rounds-follow = einen Stützpunkt ziehen; die Runden folgen
board-remove = Entfernen
board-hold = Halten
board-what-holds-this-knot = Was diesen Stützpunkt hält
board-a-closing-thread-a-seam-or-a-card = Ein Zugfaden, eine Naht oder Pappe, denn Stoff allein hält keine Ecke
board-error-the-rounds-shown-are-the-last = { $error }. Gezeigt sind die letzten Runden, die gingen.
board-picture = Bild
board-select-the-picture-to-move-and-scale = Bild wählen, um es zu verschieben und zu skalieren
board-zoom-out = Verkleinern
board-zoom-in = Vergrößern
board-name-the-wheel-does-this-too = { $name }; geht auch mit dem Mausrad
board-neck = Hals
board-the-neck-of-the-finished-piece-side-to = Der Hals des fertigen Teils, von Seite zu Seite; zum Tippen klicken
board-known-length-end-end = Bekannte Länge, Ende { $end }
board-put-both-ends-on-something-of-a-length = Beide Enden auf etwas legen, dessen Länge bekannt ist
board-known-length = Bekannte Länge
board-the-true-length-type-it-and-the = Die wahre Länge; tippen, und das Bild wird skaliert

## The picture on the board

photo-done = Fertig
photo-deselect-the-picture = Bild nicht mehr auswählen
photo-back-to-the-knots-esc = Zurück zu den Stützpunkten (Esc)
photo-remove = Entfernen
photo-remove-the-picture = Bild entfernen
photo-remove-it-its-file-stays = Entfernen; die Datei bleibt
photo-replace = Ersetzen …
photo-replace-the-picture = Bild ersetzen
photo-another-one-in-its-place = Ein anderes an seiner Stelle
photo-trace = Nachzeichnen …
photo-trace-the-picture = Bild nachzeichnen
photo-find-its-outline-to-look-at-first = Den Umriss finden, erst zum Ansehen
photo-hide = Ausblenden
photo-hide-the-picture = Bild ausblenden
photo-keep-it-out-of-sight = Nicht zeigen
photo-lock = Sperren
photo-lock-the-picture = Bild sperren
photo-keep-it-in-its-place = Am Platz halten
photo-opacity = Deckkraft
photo-opacity-name = Deckkraft

## The place of a knot

readout-width = Breite
readout-radius = Radius
readout-height = Höhe
readout-wanted-line = gewünschte Linie
readout-knot-knot-what = Stützpunkt { $knot } { $what }
readout-of-the-wanted-line-click-to-type = Der gewünschten Linie; zum Tippen klicken
readout-show-the-radius = Radius zeigen
readout-show-the-width = Breite zeigen
readout-name-instead = { $name } stattdessen
board-new-value = Neuer Wert: { $what }
board-the-known-length-has-no-size-pull-its = Die bekannte Länge hat keine Größe; erst beide Enden auseinanderziehen.
board-scale-height = Höhe skalieren
board-scale-width = Breite skalieren
board-drag-to-scale-the-height-from-the-foot = Zum Skalieren der Höhe ziehen, vom Fuß aus
board-drag-to-scale-the-width-from-the-axis = Zum Skalieren der Breite ziehen, von der Achse aus
board-scaled = { $what } { $length }
    { $share } % von vorher

## The trace card

trace-keys = Mit Tasten, auf dem Bild: Pfeile bewegen ein Kreuz, mit Umschalt weiter; die Leertaste beginnt und beendet eine Marke, die Rücktaste nimmt die letzte zurück.
trace-title = Nachzeichnen
trace-hint = erst ansehen, dann verwenden
trace-the-picture-with-the-traced-line = Das Bild mit der nachgezeichneten Linie
trace-of-the-thing-along-its-axis-without = Des Gegenstands entlang der Achse, ohne Abgeschnittenes. Bis etwas getippt wird, folgt sie aus der bekannten Länge auf der Zeichenfläche.
trace-height = Höhe
trace-how-far-the-outline-may-be-from-the = Wie weit der Umriss vom Rand liegen darf; weniger braucht mehr Stützpunkte
trace-tolerance = Toleranz
trace-the-mean-of-both-or-one-of-them = Das Mittel beider, oder eine davon
trace-side = Seite
trace-mean = Mittel
trace-left = links
trace-right = rechts
trace-the-end-of-the-thing-where-the-piece = Das Ende, an dem das Teil beginnt
trace-start = Anfang
trace-top = oben
trace-bottom = unten
trace-a-handle-or-an-ear-which-no-turned = Ein Henkel oder Ohr, das keine gedrehte Form hat
trace-cut-off-what-is-not-round = Abschneiden, was nicht rund ist
trace-where-the-background-is-not-plain-draw = Bei unruhigem Hintergrund: ein Rechteck um den Gegenstand ziehen und Striche darauf und daneben
trace-draw-on-the-picture = Auf das Bild zeichnen
trace-mark = Marke
trace-draw = Zeichnen
trace-undo-the-last-mark = Letzte Marke zurück
trace-clear-all-marks = Alle Marken löschen
trace-found = Gefunden
trace-nothing-yet = Noch nichts
trace-trace-again = Noch einmal
trace-tracing = Nachzeichnen
trace-stopped = Angehalten
trace-use-the-outline = Umriss verwenden
trace-it-replaces-the-outline-you-can-then = Er ersetzt den Umriss; seine Stützpunkte lassen sich dann ziehen
trace-number-cut-off = { $number } abgeschnitten
start-its-name-is-not-readable-text = der Name ist kein lesbarer Text
start-rename-it = umbenennen

## The Assembly stage: cords, loops, wires, joints

attach-remove = Entfernen
attach-remove-one = Entfernen: { $what }
attach-held-by = Gehalten von
attach-down-to = Hinunter zu
attach-around-it-or-pulled-through-it = Darum gelegt oder hindurchgezogen
attach-goes = Verläuft
attach-around = darum
attach-through = hindurch
attach-cord-goes = Schnur verläuft
attach-on-which-side-of-the-fabric-they-are = Auf welcher Seite des Stoffs sie sind
attach-knots = Knoten
attach-inside = innen
attach-outside = außen
attach-drop = Abstand
attach-how-far-below-the-other-end-hangs = Wie weit darunter das andere Ende hängt
attach-free-loop = Freie Schlaufe
attach-how-long-the-free-loop-above-is = Wie lang die freie Schlaufe darüber ist
attach-drop-of-the-cord = Abstand der Schnur
attach-thick = Dicke
attach-thickness-of-the-cord = Dicke der Schnur
attach-how-thick-it-is = Wie dick sie ist
attach-strands = Stränge
attach-strands-of-the-cord = Stränge der Schnur
attach-how-many-cords-go-down = Wie viele Schnüre hinunterführen
attach-on = An
attach-on-the-axis-or-on-the-fabric-beside-it = Auf der Achse oder auf dem Stoff daneben
attach-sits = Sitzt
attach-on-the-axis = auf der Achse
attach-aside = daneben
attach-loop-sits = Schlaufe sitzt
attach-from-front = Von vorne
attach-turn-of-the-loop = Drehung der Schlaufe
attach-how-far-around-from-the-front-the-way = Wie weit herum von vorne, in Laufrichtung der Runden
attach-around-large = Umfang
attach-length-of-the-loop = Länge der Schlaufe
attach-length-of-the-loop-all-around = Länge der Schlaufe rundum
attach-stands-off = Abstehend
attach-how-far-the-loop-stands-off = Wie weit die Schlaufe absteht
attach-from-the-fabric-to-where-it-hangs = Vom Stoff bis zum Aufhängepunkt
attach-thickness-of-the-loop = Dicke der Schlaufe
attach-carries = Trägt
attach-stands-in = Steht in
attach-what-it-is-made-of = Woraus er ist
attach-metal = Metall
attach-free = Frei
attach-free-length-of-the-wire = Freie Länge des Drahts
attach-between-the-two-bodies = Zwischen den beiden Körpern
attach-thickness-of-the-wire = Dicke des Drahts
attach-how-thick-one-strand-is = Wie dick ein Strang ist
attach-strands-of-the-wire = Stränge des Drahts
attach-how-many-are-side-by-side = Wie viele nebeneinander
attach-the-part-that-turns-on-it-with-its = Das Teil, das sich daran dreht, mit seinen Kopien
attach-turns = Dreht
attach-part-that-turns = Teil, das sich dreht
attach-passes = Durchgänge
attach-passes-of-the-thread = Durchgänge des Fadens
attach-how-often-the-thread-goes-through = Wie oft der Faden hindurchgeht
attach-which-part = Welches Teil
attach-its-end = sein Ende
attach-its-start = sein Anfang
attach-its-neck = sein Hals
attach-its-lip = sein Rand
attach-a-round = eine Runde
attach-a-neck-and-a-lip-are-found-by-its = Hals und Rand ergeben sich aus der Form
attach-at = Bei
attach-name-at = { $name }, bei
attach-name-round = { $name }, Runde
attach-after-round = Nach Runde
attach-the-round-after-which-it-is-held = Die Runde, nach der es gehalten wird
attach-cut-length-in-all-it-holds-bears-g-g = Insgesamt { $length } abschneiden; es hält { $bears_g } g
attach-it-holds-times-times-what-stands-on-it = Er trägt das { $times }-Fache dessen, was darauf steht; { $length } abschneiden
attach-it-buckles-too-soon-it-needs-at-least = Er knickt zu früh: mindestens { $mm } mm
attach-it-buckles-too-soon-at-any-thickness = Er knickt zu früh, gleich wie dick
attach-cut-length-of-thread = { $length } Faden abschneiden
attach-it-hangs-leaning = Es neigt sich um { $deg }°; insgesamt { $length } abschneiden
attach-it-hangs-upright = Es hängt gerade; insgesamt { $length } abschneiden
attach-leg-is-slack = Schnur { $number }: { $length }, sie hängt schlaff
attach-leg-is = Schnur { $number }: { $length }, sie trägt { $bears_g } g
attach-name-turn = { $name }, von vorne
attach-cord-number = Schnur { $number }
attach-how-far-above-the-cords-meet = Wie hoch über der höchsten Stelle, oder über ihrer Mitte, die Schnüre zusammenkommen
attach-height-of-the-meeting-point = Höhe des Treffpunkts
attach-above = Treffpunkt
attach-all-equal = alle gleich
attach-for-upright = für gerade
attach-cut-to-hang-upright-or-equal = So lang, wie jede sein muss, damit es gerade hängt, oder alle gleich
attach-how-many-cords-meet-above = Wie viele Schnüre oben zusammenkommen
attach-cords = Schnüre
attach-lengths = Längen
attach-on-the-sheet = Auf dem Blatt
attach-row = Verbindung { $number }: { $title }, { $below }
attach-row-refused = Verbindung { $number }: { $title }, { $below }, ungeeignet für die, für die es ist

## The Assembly stage: parts

part-its-end = sein Ende
part-its-start = sein Anfang
part-its-front = seine Vorderseite
part-its-back = seine Rückseite
part-what-of-it-is-up-when-the-toy-stands = Was oben ist, wenn die Figur steht
part-up-is = Oben ist
part-a-part-that-is-pressed-flat-never-is = Ein flach gedrücktes Teil ist es nie
part-stuffed = Gefüllt
part-its-front-is-the-plane-through-this = Vorne ist die Ebene durch diese Masche und die Achse: Alles, was es trägt, zählt von dort
part-front-at-round = Vorne, bei Runde
part-round-of-its-front = Runde der Vorderseite
part-after-stitch = Nach Masche
part-stitch-of-its-front = Masche der Vorderseite
part-name-less = { $name }, weniger
part-name-more = { $name }, mehr

## The Assembly stage: the toy

toy-parts = Teile
toy-selected = Gewählt
toy-steps = Schritte
toy-measurements = Fakten
toy-no-part-is-in-its-place-yet = Noch ist kein Teil an seinem Platz.
toy-where-a-part-sits-and-whether-it-fits = Wo ein Teil sitzt, und ob es passt.
toy-what-is-done-first-what-next = Was zuerst getan wird, was danach.
toy-what-it-weighs-whether-it-stands = Was sie wiegt, ob sie steht.
toy-piece-becomes-the-body-eyes-a-nose-a = { $piece } wird der Körper. Daran kommen Augen, Nase, eine Aufhängeschlaufe und jedes weitere Teil.
toy-piece-becomes-the-body-the-other-piece = { $piece } wird der Körper; das andere Teil kommt daran.
toy-piece-becomes-the-body-the-other-n = { $piece } wird der Körper; die anderen { $n } Teile kommen daran und aneinander.
toy-put-the-pieces-together = Teile zusammensetzen
toy-for-a-baby = ein Baby
toy-for-a-child = ein Kuscheltier
toy-for-three-and-over = ab 3 Jahren
toy-for-ornament = Dekoration
toy-made-for = gedacht für
toy-made-for-name = Gedacht für
toy-hangs = hängt
toy-tips-at = kippt bei { $deg }°
toy-rocks-upright = richtet sich auf
toy-rolls-over = rollt um
toy-falls-over = fällt um
toy-upright = aufrecht
toy-forward = nach vorn
toy-back = nach hinten
toy-aside = zur Seite
toy-weight = Gewicht
toy-between-low-and-high-g-makers-differ = Zwischen { $low } und { $high } g: Hände unterscheiden sich
toy-stands = Stand
toy-how-far-it-can-be-tilted-before-it = Wie weit sie sich neigen lässt, bevor sie kippt, als wäre sie starr
toy-hangs-large = Hängt
toy-how-far-its-top-leans-as-if-it-were = Wie weit sich ihr oberes Ende neigt, als wäre sie starr
toy-map-of-part = Karte: { $part }
toy-from-outside-front-in-the-middle = von außen, vorne in der Mitte
toy-front-in-the-middle = vorne in der Mitte
toy-arrow-keys-left-and-right-a-stitch-up = Pfeiltasten: links und rechts eine Masche, auf und ab eine Runde
toy-add-a-part = Teil hinzufügen
toy-cord-or-wire = Schnur oder Draht
toy-a-piece-eyes-a-nose-on-what-is = Ein Teil, Augen, eine Nase: auf das Gewählte
toy-what-the-toy-hangs-by-what-joins-two = Woran die Figur hängt, was zwei Körper verbindet, woran sich ein Teil dreht
toy-on-on = Auf { $on }
toy-by-itself = Für sich
toy-piece-as-another-body = { $piece } als weiterer Körper
toy-eye = Auge
toy-nose = Nase
toy-small-thing = Kleinteil
part-remove = Entfernen
part-remove-part = { $part } entfernen
part-with-what-it-carries-del = Mit allem, was daran sitzt (Entf)
part-what-carries-it = Was es trägt
part-sits-on = Sitzt auf
part-by = Mit
part-the-edge-it-is-put-on-by-and-how = Der Rand, mit dem es angesetzt wird, und wie
part-attached-by = Angesetzt mit
part-after-round = Nach Runde
part-round = Runde
part-round-of-its-place = Runde seines Platzes
part-the-round-of-what-carries-it-where-its = Die Runde des Trägers, auf der seine Mitte liegt
part-stitches-from-front = Maschen von vorne
part-stitches-of-its-place-from-the-front = Maschen seines Platzes von vorne
part-counted-the-way-the-rounds-run = In Laufrichtung der Runden gezählt; negativ andersherum
part-around-the-line-upright-on-the-fabric = Um die Senkrechte auf dem Stoff; bei 0 zeigt die Vorderseite zu späteren Runden
part-turn = Drehung
part-turn-of-the-part = Drehung des Teils
part-leaning-from-that-line-toward-its-own = Von dieser Linie zur eigenen Vorderseite geneigt
part-tilt = Neigung
part-tilt-of-the-part = Neigung des Teils
part-sunk-in = Eingesenkt
part-how-deep-it-is-sunk-in = Wie tief es eingesenkt ist
part-pushed-into-what-carries-it-along-its = Entlang der eigenen Achse in den Träger gedrückt; negativ steht ab
part-one = eines
part-mirrored = gespiegelt
part-around = rundum
part-copies = Anzahl
part-copies-of-the-part = Anzahl des Teils
part-how-many = Wie viele
part-copies-around = Anzahl rundum
part-evenly-around-from-its-place = Gleichmäßig rundum von seinem Platz aus
part-sewn-on = angenäht
part-a-washer-inside = Scheibe innen
part-a-thread-it-turns-on = Faden, an dem es dreht
part-glue = Kleber
part-what-holds-it-glue-alone-does-not = Was es hält; Kleber allein nicht
part-held-by = Gehalten von
part-push-it-in-mm-mm-further = { $mm } mm tiefer eindrücken
part-on-the-sheet = Auf dem Blatt
toy-point-at-one-on-the-toy = auf eines an der Figur zeigen
toy-does-not-fit = passt nicht
toy-a-small-part = ein Kleinteil
toy-not-suitable-for-who-it-is-made-for = ungeeignet für die, für die es ist
toy-part-row = Teil { $part }, { $below }
toy-toy = Figur
toy-preparing = wird vorbereitet …
toy-drag-to-turn-click-to-select-a-part = ziehen zum Drehen, klicken zum Wählen
toy-drag-the-selected-part-to-move-it = das gewählte Teil ziehen, um es zu bewegen
toy-look-at-it = Ansicht: { $side }
toy-balance = Gleichgewicht
toy-show-its-balance = Gleichgewicht zeigen
toy-its-center-of-mass-and-what-it-stands = Ihr Schwerpunkt, und worauf sie steht oder woran sie hängt
toy-fit-the-toy = Figur einpassen
toy-all-of-it-in-sight = Ganz im Bild
toy-zoom-in = Vergrößern
toy-larger = Größer
toy-zoom-out = Verkleinern
toy-smaller = Kleiner
toy-eyes = Augen
toy-nose-large = Nase
toy-other-small-thing = Anderes Kleinteil
toy-loop-or-ring-to-hang-by = Schlaufe oder Ring zum Aufhängen
toy-cord-to-hang-by = Schnur zum Aufhängen
toy-cords-from-several-places = Schnüre von 2 oder 3 Stellen
toy-cord-to-another-body = Schnur zu einem anderen Körper
toy-wire-to-another-body = Draht zu einem anderen Körper
toy-thread-joint = Fadengelenk
toy-nothing-yet-click-a-part-in-the-list = Noch nichts. Ein Teil in der Liste oder an der Figur anklicken: Hier steht, wo es sitzt und ob es passt.

## The Assembly stage: small things

small-what-the-sheet-calls-it-left-empty-for = Wie das Blatt es nennt; leer lassen für die übliche Bezeichnung
small-name = Name
small-name-of-the-small-thing = Name des Kleinteils
small-across = Breite
small-across-it = Wie breit es ist
small-deep = Tiefe
small-how-deep-it-is = Wie tief es ist
small-long = Länge
small-how-long-it-is = Wie lang es ist
small-long-is-away-from-what-carries-it = Länge ist weg vom Träger
small-embroidered-in-yarn-otherwise-it-has-a = Mit Garn gestickt; sonst hat es einen Stift und innen eine Scheibe
small-embroidered = Gestickt
small-how-wide-it-is = Wie breit es ist
small-its-diameter = Sein Durchmesser
small-weighs = Gewicht
small-what-it-weighs = Was es wiegt
small-0-is-not-known-then-it-is-guessed-from = 0 heißt unbekannt: dann nach der Größe geschätzt
toy-in-working-order = in der Reihenfolge
toy-nothing-to-do-yet-put-a-part-on-the = Noch nichts zu tun: ein Teil an den Körper setzen.
toy-step-number-title-below = Schritt { $number }: { $title }, { $below }
toy-on-on-small = an { $on }
toy-before-stuffing = vor dem Füllen
toy-embroidered = gestickt
toy-sts-each = je { $sts }
toy-sewn-around = rundum angenäht
toy-together = zusammen
toy-apart = Auseinander
toy-parts-pulled-apart = Teile auseinandergezogen

## Where parts sit, in words

placed-name-place-of-all = { $name }, { $place } von { $all }
placed-2-mirrored = × 2, gespiegelt
placed-n-around = × { $n }, rundum
placed-the-body = der Körper
placed-a-body-of-its-own = ein eigener Körper
placed-on-on = an { $on }
placed-on-at = an { $on }, { $place }
placed-all-around-rnds-first-last = rundum, Rd { $first }–{ $last }
placed-all-around-rnd-first = rundum Rd { $first }
placed-rnds-first-last = Rd { $first }–{ $last }
placed-rnd-first = Rd { $first }
placed-between-apart = zwischen Rd { $last } und { $first }
placed-between = zwischen Rd { $from } und { $to }
placed-over-one-another = übereinander
placed-1-st-apart = 1 M Abstand
placed-sts-apart = { $n } M Abstand
placed-n-sts = { $n } M
placed-along-place = entlang { $place }
placed-sunk-in-sewn-where-the-two-meet-around = Eingesenkt: genäht, wo sich beide treffen, { $around }
placed-pressed-flat-n-sts-through-both-layers = Flach gedrückt: { $n } M durch beide Lagen, { $around }
placed-sews-on-with-n-sts-around = Wird mit { $n } M angenäht, { $around }
placed-words-at-rnd-round = { $words } bei Rd { $round }
placed-its-open-end = sein offenes Ende
placed-its-open-start = sein offener Anfang
placed-its-end-sunk-in = sein Ende, eingesenkt
placed-its-start-sunk-in = sein Anfang, eingesenkt
placed-its-end-pressed-flat = sein Ende, flach gedrückt
placed-its-start-pressed-flat = sein Anfang, flach gedrückt
placed-cord = Schnur
placed-cord-down = { $from }, hinunter zu { $to }
placed-cord-to-hang-by = Schnur zum Aufhängen
placed-from-places-on = von { $n } Stellen an { $names }
placed-cords-that-meet = Aufhängung
placed-loop = Schlaufe
placed-wire = Draht
placed-wire-into = { $from }, in { $to }
placed-joint = Gelenk
placed-part-turns-on-a-thread = { $part } dreht sich an einem Faden
placed-at-its-start = am Anfang
placed-at-its-end = am Ende
placed-at-its-neck-rnd-round = am Hals, Rd { $round }
placed-at-its-neck-which-it-does-not-have = am Hals, den es nicht hat
placed-at-its-lip-rnd-round = am Rand, Rd { $round }
placed-at-its-lip-which-it-does-not-have = am Rand, den es nicht hat
placed-at-rnd-round = bei Rd { $round }

## The Proofread stage

findings-reading = wird gelesen …
findings-none = keine
findings-problems = Probleme
findings-what-does-not-add-up-is-listed-here = Hier steht, was nicht aufgeht, jeweils mit der wahrscheinlichsten Korrektur.
findings-no-rounds-were-found-in-it = Keine Runden darin gefunden.
findings-unread = Was gelesen wurde, geht auf; { $n ->
        [one] 1 Rundenzeile wurde
       *[other] { $n } Rundenzeilen wurden
    } nicht gelesen.
findings-no-problems-found-every-round-adds-up = Keine Probleme gefunden: Jede Runde geht auf.
findings-read-in-other-terms = In anderen Begriffen lesen
findings-as-the-text-says = Wie der Text sagt
findings-line-line = Zeile { $line }
findings-line-says = Zeile { $line }: { $message }
findings-fix = Korrigieren
findings-fix-line-line-problem-number = Zeile { $line } korrigieren, Problem { $number }
findings-make-this-change-in-the-text-ctrl-z = Diese Änderung im Text machen; Strg+Z nimmt sie zurück
findings-say-what-it-means = Sagen, was es heißt
findings-say-what-line-line-means-problem = Sagen, was Zeile { $line } heißt, Problem { $number }
findings-put-it-in-usual-words-it-is-read-that = In üblichen Worten sagen; so wird es überall in diesem Text gelesen
findings-show-the-place-in-the-text = Die Stelle im Text zeigen
findings-sum = { $rounds ->
        [one] 1 Runde
       *[other] { $rounds } Runden
    }, { $stitches ->
        [one] 1 Masche
       *[other] { $stitches } Maschen
    }
findings-widest-n = breiteste { $n }
saying-words-means = „{ $words }“ heißt
saying-2-sc-inc-x-6 = (2 sc, inc) x 6
saying-what-it-means = Was es heißt
saying-a-number-stands-for-any-number-and-for = Eine Zahl steht für jede Zahl, und für dieselbe in der Bedeutung.
saying-save = Speichern
saying-save-what-it-means = Bedeutung speichern
saying-cancel = Abbrechen
saying-say-nothing = Nichts sagen
saying-what-you-said-about-this-text = Was du zu diesem Text gesagt hast
saying-words-means-means = „{ $words }“ heißt { $means }
saying-remove = Entfernen
saying-remove-what-you-said-number = Gesagtes entfernen, { $number }
proofread-a-written-pattern-yours-or-anothers = jede Anleitung
proofread-open-pattern = Anleitung öffnen
proofread-paste-a-pattern = Anleitung einfügen
proofread-save-the-text = Text speichern
proofread-copy-the-text = Text kopieren
proofread-paste-a-pattern-or-open-a-file-with = Eine Anleitung einfügen oder eine Datei öffnen.
proofread-every-round-is-checked-against-its = Jede Runde wird beim Tippen mit ihren Nachbarn verglichen.
proofread-pattern-text = Text der Anleitung
proofread-read-as-reading = Gelesen als: { $reading }
proofread-read-as-reading-supplied = Gelesen als: { $reading } ({ $supplied })
proofread-this-round-was-not-read-the-next-is = Diese Runde wurde nicht gelesen; die nächste wird mit der genannten Zahl verglichen.

## File dialogs of the desktop

dialog-png-jpeg-or-webp = PNG, JPEG oder WebP
dialog-pictures-drawings-tables-and-solids = Bilder, Zeichnungen, Tabellen und Körper
dialog-text-page-document-or-pdf = Text, Webseite, Dokument oder PDF
dialog-plain-text = Nur Text
dialog-course = Kurs
dialog-web-page = Webseite
dialog-picture-of-the-first-page = Bild der ersten Seite
dialog-pdf = PDF
dialog-markdown = Markdown
dialog-captions-subrip = Untertitel (SubRip)
dialog-captions-webvtt = Untertitel (WebVTT)
dialog-choose-a-photograph = Foto wählen
dialog-choose-a-logo = Logo wählen
dialog-open-the-published-version = Veröffentlichte Fassung öffnen
dialog-plumpline-project = Plumpline-Projekt
dialog-open-a-project = Projekt öffnen
dialog-open-a-written-pattern = Geschriebene Anleitung öffnen
dialog-choose-a-picture-to-trace = Bild zum Nachzeichnen wählen
dialog-choose-a-file-with-a-shape-in-it = Datei mit einer Form wählen
dialog-save-the-written-pattern = Geschriebene Anleitung speichern
dialog-export-the-sheet = Blatt exportieren
dialog-export-the-picture-of-the-body = Bild des Körpers exportieren
dialog-print-the-lesson-as-a-pdf = Lektion als PDF drucken
dialog-save-the-course = Kurs speichern
dialog-open-a-course = Kurs öffnen
dialog-save-the-project = Projekt speichern

## What went wrong

trouble-the-file = Die Datei
trouble-its-file-may-hold-the-old-version-or = die Datei kann die alte oder die neue Fassung enthalten; anderswo speichern
trouble-try-again = noch einmal versuchen
trouble-book-kept = { $path }: { $error }; sie ist aufgehoben als { $aside }
lesson-tally = { $right } von { $all } richtig bisher: { $list }
trouble-copy-is-copied-next-to-the-project-so = { $copy } ist neben das Projekt kopiert und geht mit.
trouble-the-picture-does-not-go-with-the = Das Bild geht nicht mit dem Projekt: { $error }.
trouble-reading-the-pattern = Anleitung wird gelesen
trouble-written-piece = Geschriebenes Teil
trouble-the-pattern-could-not-be-checked = Die Anleitung ließ sich nicht prüfen ({ $broken }); zum Wiederholen ändern
trouble-preparing-the-sheet = Blatt wird vorbereitet
trouble-it-could-not-be-made-broken = es ließ sich nicht erstellen ({ $broken })
trouble-preparing-the-sizes = Größen werden berechnet
trouble-the-sizes-could-not-be-planned-broken = Die Größen ließen sich nicht planen ({ $broken }); zum Wiederholen eine ändern
trouble-putting-the-toy-together = Figur wird zusammengesetzt
trouble-the-toy-could-not-be-drawn-broken-turn = Die Figur ließ sich nicht zeichnen ({ $broken }); zum Wiederholen drehen
trouble-the-results-could-not-be-found-broken = Die Ergebnisse ließen sich nicht finden ({ $broken })
trouble-the-body-could-not-be-drawn-broken = Der Körper ließ sich nicht zeichnen ({ $broken }); zum Wiederholen drehen
trouble-the-fabric-could-not-relax-broken = Der Stoff ließ sich nicht entspannen ({ $broken }); Schritt neu wählen
trouble-the-sizes-could-not-be-drawn-broken = Die Größen ließen sich nicht zeichnen ({ $broken })
trouble-it-could-not-be-planned-broken = es ließ sich nicht planen ({ $broken })
trouble-the-picture-could-not-be-traced-why = das Bild ließ sich nicht nachzeichnen ({ $why })
trouble-the-picture-could-not-be-read-broken = das Bild ließ sich nicht lesen ({ $broken }); ein anderes wählen
trouble-it-cannot-be-shown = es lässt sich nicht anzeigen
trouble-choose-another = ein anderes wählen
trouble-the-file-could-not-be-read-why = die Datei ließ sich nicht lesen ({ $why })
trouble-piece = Teil
trouble-folder-recovery-copies-cannot-be-kept = { $folder }: Sicherungskopien sind nicht möglich ({ $error }); oft speichern
trouble-path-the-recovery-copy-cannot-be = { $path }: Die Sicherungskopie lässt sich nicht schreiben ({ $error }); Projekt speichern
trouble-there-is-no-room-for-another = kein Platz für eine weitere
trouble-recovery-copies-and-gauges-may-not-be = Sicherungskopien und Maschenproben gehen vielleicht verloren ({ $broken }); speichern
trouble-no-thread-could-be-started-error = kein Prozess ließ sich starten: { $error }
trouble-it-was-stopped = es wurde angehalten
trouble-the-program-is-at-fault = das Programm hat einen Fehler
start-knots-knots = { $knots } Stützpunkte
body-whole-window = Ganzes Fenster
body-show-larger = Den Körper größer zeigen
body-larger-does = Den Körper an die Stelle des Umrisses setzen
body-larger = Größer
body-whole-window-does = Das Fenster mit dem Körper füllen; Esc beendet es
body-fill-the-window = Das Fenster mit dem Körper füllen
present-view-does = Dies zeigen, höchstens zwei von dreien
present-end-does = Zurück zur Werkbank (Esc)
present-end-name = Vorführung beenden
making-small-does = Die Runde und ihre Schritte in einem kleinen Fenster, das oben bleibt, neben einem Film
making-small = Kleines Fenster
making-small-title = Plumpline: unter der Nadel
making-small-planning = Wird geplant …
color-hue = Farbton
color-strength = Kraft der Farbe
color-lightness = Helligkeit der Farbe
color-hexadecimal = Farbe in Hexadezimalziffern
color-hexadecimal-does = Rot, Grün und Blau in sechs Ziffern: #B85640
yarn-brand-hint = Marke, Sorte, Farbe
yarn-brand = Marke des Garns
yarn-brand-does = Wie auf der Banderole, in eigenen Worten; steht auf dem Blatt
yarn-a-ball = Ein Knäuel
yarn-not-known = unbekannt
yarn-ball-does = Was ein Knäuel wiegt; auf nichts gezogen ist es unbekannt
yarn-ball-usual-does = Angeben, dass ein Knäuel 50 g wiegt
yarn-meters-in-a-ball = Meter in einem Knäuel
sizes-whole-working = wird berechnet …
sizes-whole-as-drawn = wie gezeichnet
sizes-whole-cannot = ein Teil davon geht nicht
sizes-all-pieces = Alle Teile
sizes-of-all-pieces = Größen aller Teile
sizes-all-pieces-does = Die Größen aller Teile in einer Tabelle, und was jede braucht
sizes-no-stuffing = keine
sizes-beside-title = Neben den Größen
sizes-about-seams = wo Teile sich treffen
sizes-about-yarn = in einem anderen gearbeitet
sizes-about-sample = was ein fertiges Teil lehrt
sizes-about-match = so groß wie ein Spielzeug
board-scale-hint = Maßstab: beide Enden der Linie auf eine bekannte Länge legen, dann diese tippen
board-fill-does = Den Körper über dem Bild füllen oder nur seinen Rand zeigen
board-fill = Den Körper füllen
board-share-does = An derselben Stelle, im selben Maßstab
board-another-picture = Anderes Bild …
ask-folder-above = Zum Ordner darüber
ask-up = Nach oben
start-add-does = Ein Teil mehr, nach dem gewählten
start-add = Zu diesem Projekt hinzufügen
start-drawn-freehand = Freihändig gezeichnet
start-freehand-about = Neben der Achse gezeichnet
start-draw-here = Die Form hier zeichnen
start-draw-hint = Eine Seite von Ende zu Ende neben die gestrichelte Achse zeichnen
start-freehand-short = Freihand: zu kurze Linie; von Ende zu Ende zeichnen
start-freehand-level = Freihand: keine Höhe; entlang der Achse zeichnen
pieces-hide-does = Aus der Leiste nehmen; es bleibt im Projekt und in dieser Liste
pieces-gallery = Galerie …
pieces-gallery-name = Aus der Galerie hinzufügen
pieces-gallery-does = Alles, womit ein Teil beginnen kann: Grundformen, Formel, Freihand, Datei
pieces-show = Zeigen
pieces-hide = Verbergen
measured-balls = { $n ->
        [one] 1 Knäuel
       *[other] { $n } Knäuel
    }
measured-balls-in-all = { $balls }, mit dem, was der Schätzung fehlen kann
yarn-takes = Dieses Teil braucht { $length }
yarn-takes-balls = { $n ->
        [one] Dieses Teil braucht { $length }, 1 Knäuel
       *[other] Dieses Teil braucht { $length }, { $n } Knäuel
    }
board-picture-of = Das Bild von { $piece }
recent-continue = { $piece } weiter, Runde { $round }
recent-go-on-with = Weiter mit { $name }
recent-name-in-folder = { $name }, in { $folder }
recent-in-folder = in { $folder }
pieces-hidden = { $piece }, verborgen
present-view-name = Vorführen: { $view }
present-end = Ende
present-outline = Umriss
present-body = Körper
present-bend = Biegestreifen
strip-lies-flat = liegt flach
step-add-the-piece = Teil { $name } hinzufügen
ask-folder = Ordner { $name }
ask-file = Datei { $name }
sizes-whole-all = Alle, { $size }
making-small-of = von { $last } · { $name }
making-small-made = { $done } von { $count }
making-small-to-go = noch { $n }
making-small-then = dann { $stitch }
start-freehand = Freihand
part-each-its-own-place = Jedes an eigenem Platz
part-left-and-right-or-each-one-around = Links und rechts, oder jedes rundum, werden eigene Teile
sheet-saved-as-name = Gespeichert als { $name }.
sheet-what-has-changed = Was sich geändert hat
sheet-and-more-more = … und { $more } mehr.
sheet-on-the-sheet-the-first-line-is-the = Auf dem Blatt; die erste Zeile ist die Überschrift
sheet-changes-on-the-sheet = Änderungen auf dem Blatt
told-the-changes-are-copied = Die Änderungen sind kopiert.
told-the-system-opens-it-with-nothing-error = das System öffnet es nicht ({ $error })
told-open-it-from-its-folder = aus dem Ordner öffnen

## Commands of publishing

publish-web-page = Webseite …
publish-text = Text …
publish-page-picture = Seitenbild …
publish-print = Drucken …
publish-open-it = Öffnen
publish-add-a-photograph = Foto hinzufügen …
publish-choose-a-logo = Logo wählen …
publish-compare-with-a-published-version = Mit einer Veröffentlichung vergleichen …
publish-copy-the-changes = Änderungen kopieren
publish-put-the-changes-on-the-sheet = Änderungen aufs Blatt setzen
publish-save-the-sheet-as-one-page-for-a = Das Blatt als eine Seite für den Browser speichern
publish-save-the-whole-pattern-as-plain-text = Die ganze Anleitung als Text speichern
publish-save-a-picture-of-the-first-page = Ein Bild der ersten Seite speichern
publish-open-the-pages-in-the-systems-viewer = Die Seiten im Betrachter des Systems öffnen, der sie druckt
publish-open-the-file-that-was-written-last = Die zuletzt geschriebene Datei öffnen
publish-add-a-photograph-to-the-sheet-png-jpeg = Ein Foto aufs Blatt setzen: PNG, JPEG oder WebP
publish-choose-a-logo-for-the-head-of-the = Ein Logo für den Kopf der ersten Seite wählen
publish-choose-the-project-as-it-was-published = Das Projekt wie veröffentlicht wählen, um Änderungen zu sehen
publish-copy-what-has-changed-as-an-errata = Die Änderungen als Errata-Absatz kopieren
publish-add-what-has-changed-to-the-sheet-in-a = Die Änderungen in einem eigenen Abschnitt aufs Blatt setzen

## The Assembly stage: the surface of a part, painted and embroidered

surface-of = Oberfläche von { $part }
surface-chosen = { $name }, Runde { $round }, Maschen { $from } bis { $to }
surface-off = Weg
surface-take-paint-off = Farbe wegnehmen
surface-back-to-the-yarn-of-the-round = Maschen bekommen wieder das Garn ihrer Runde
surface-paint-in = In Garn { $letter } malen
surface-embroider-in = In Garn { $letter } sticken
surface-new-yarn = Neues Garn
surface-paint-in-a-new-yarn = Ein neues Garn nehmen
surface-comes-with-the-first-stitch = Kommt mit der ersten Masche
surface-round = Runde
surface-round-to-paint = Runde zum Malen
surface-from = Von Masche
surface-first-stitch-to-paint = Erste Masche zum Malen
surface-to = Bis Masche
surface-last-stitch-to-paint = Letzte Masche zum Malen
surface-counted-as-rounds-are-worked = Gezählt, wie gehäkelt wird; Runde 1 hat ein Garn
surface-take-paint-off-these = Von diesen wegnehmen
surface-paint-these-in = Diese in { $letter } malen
surface-paint = Malen
surface-backstitch = Rückstich
surface-straight = Gerader Stich
surface-knots = Knötchen
surface-needle-round = Runde, nach der die Nadel durchgeht
surface-needle-stitch = Masche, nach der die Nadel durchgeht
surface-after-stitch = Nach Masche
surface-where-the-needle-goes-through = Wo die Nadel durch die Maschen geht
surface-add-the-place = Stelle dazu
surface-take-last-off = Letzte weg
surface-another-line = Neue Linie
surface-line = { $number }: { $stitch } × { $places }, Garn { $letter }
surface-remove-line = Stickerei { $number } entfernen
surface-mirror-line = Stickerei { $number } spiegeln
surface-mirrored = Gespiegelt
surface-click-between-stitches = Zwischen die Maschen klicken, eine Stelle nach der anderen; die Leertaste fügt die mit Pfeiltasten gewählte Stelle hinzu, die Rücktaste nimmt die letzte weg

# Dateien, die gelesen und geschrieben werden
file-the-file = die Datei
file-line = Zeile { $line }
file-no-docx = die Datei ist kein .docx oder beschädigt; die Anleitung noch einmal speichern
file-is-broken = die Datei ist beschädigt; die Anleitung noch einmal speichern
file-is-locked = die Datei ist mit einem Passwort geschützt; ohne Passwort speichern
file-is-no-text = das ist kein Text; die Anleitung als reinen Text speichern
file-holds-too-much-text = sie enthält mehr als { $most } MB Text; nur die Anleitung speichern
file-groups-too-deep = ihre Gruppen sind zu tief verschachtelt; die Anleitung als reinen Text speichern
pdf-is-locked = das PDF ist mit einem Passwort geschützt; ohne Passwort speichern
pdf-is-broken = das PDF ist beschädigt; noch einmal speichern
pdf-has-too-many-pages = das PDF hat { $pages } Seiten; nur die der Anleitung speichern
pdf-holds-no-text = das PDF enthält Bilder und keinen Text; die Anleitung abtippen oder einfügen
profile-is-a-picture = { $file }: das ist ein Bild; es nachzeichnen lassen (plumpline trace)
profile-table-has-its-height = { $file }: eine Tabelle gibt ihre Höhe selbst an; die Höhe weglassen
sheet-ending-not-known = { $file }: die Endung ist unbekannt; der Name muss auf .pdf, .html, .md, .txt oder .png enden, für den gesprochenen Text auf .srt oder .vtt
script-is-a-text = ein Sprechtext ist ein Text; der Name muss auf .txt, .srt oder .vtt enden
blurb-is-a-text = ein Shoptext ist ein Text; der Name muss auf .txt oder .md enden
sheet-no-such-page = --page: es gibt keine Seite { $page }; die letzte ist { $last }
lesson-at-this-gauge = die Lektion mit dieser Maschenprobe: { $why }
lesson-place = Lektion
lesson-piece-not-planned = das Teil ist noch nicht geplant
lesson-mend-the-piece = es in Ordnung bringen
piece-by-name = Teil „{ $name }“
piece-fails = Teil „{ $name }“, { $why }

# Was auf den Seiten eines Blattes steht
arrange-pictures-of-your-own = Eigene Bilder
arrange-logo-place = Es steht oben auf der ersten Seite
arrange-cover-place = Es steht auf der ersten Seite
arrange-a-photograph = Ein Foto
arrange-photograph-n = Foto { $n }
arrange-what-stands-under-it = was darunter steht
arrange-caption-of-photograph = Bildunterschrift von Foto { $n }
arrange-leave-out = Weglassen
arrange-photos = Fotos
arrange-photos-why = Die eigenen Fotos außer dem Titelbild
arrange-words = Abkürzungen
arrange-words-why = Was sie bedeuten und wie Maschen gehäkelt werden
arrange-pieces = Teile
arrange-pieces-why = Die Runden jedes Teils; kein Blatt kommt ohne sie aus
arrange-assembly = Zusammensetzen
arrange-assembly-why = Wie die Teile zusammengesetzt werden
arrange-cautions = Warnhinweise
arrange-cautions-why = Was zu beachten ist, bevor man es weitergibt
arrange-changes = Was sich geändert hat
arrange-changes-why = Seit einer veröffentlichten Fassung
arrange-tester = Formular für Testende
arrange-tester-why = Eine Seite, auf der Testende ihr Ergebnis notieren
arrange-bodies = Gezeichnete Teile
arrange-bodies-why = Die ausgestopften Teile auf der ersten Seite
arrange-measures = Maße
arrange-measures-why = Jedes Teil mit seinen Maßen gezeichnet
arrange-charts = Häkelschriften
arrange-charts-why = Die Runden in Symbolen
arrange-sections = Abschnitte
arrange-where-cautions-stand = Warnhinweise stehen am Fuß der ersten Seite, wo Platz ist, außer sie werden vor die Teile geschoben.
arrange-logo = Logo
arrange-logo-name = Logo: { $name }
arrange-cover-name = Titelbild: { $name }
arrange-remove = Entfernen
arrange-later = Später
arrange-earlier = Früher
arrange-show = Zeigen
