/**
 * What usual items of the installation and usual dimensions are called, by the records' own names (from memory): the beginnings of
 * words that such a text must have, `|` between those that do for one another, and behind `~` those that it
 * may have besides. A text with any other word is another item, and so is one that says half of it.
 */
type Items = Readonly<Record<string, string>>;

const es: Items = {
  "Transport braces, packing and desiccant taken out":
    "retirad|quitad transporte|bloqueo|sujecion|refuerzo|fijacion embalaje ~ desecante",
  "Anchored to the foundation":
    "anclad|fijad|atornillad cimentaci|fundaci|bancada ~ celda anclajes",
  "Levelled, and joined to its neighbours without strain":
    "nivelad unid|acoplad|ensamblad ~ alinead celda contigua vecina adyacente sin esfuerzo tension",
  "Busbar supports, barriers and covers fitted":
    "barra|embarrado soporte|aislador tapa|cubierta|tabique|barrera montad|colocad ~ juego pantalla",
  "Pressure relief path free":
    "alivio|sobrepresion|descarga libre|despejad ~ via conducto salida canal presion gases",
  "Doors, locks and handles work":
    "puerta cerradura|cierre|cerrojo|maneta|manilla funcionan ~ bien correctamente",
  "Shutters close by themselves and can be locked":
    "persiana|obturador|guillotina cierra enclava|bloquea|candado ~ solas sola se puede por si mismas automaticamente",
  "Mechanical interlocks and coding fitted":
    "enclavamiento|bloqueo mecanic codificacion montad|colocad|instalad",
  "Labels and warning signs as on the drawing":
    "rotul|etiqueta|letrero advertencia|aviso|peligro ~ senal placa segun plano esquema",
  "Heaters and lighting fitted": "calefac|calefactor alumbrado|iluminacion montad|instalad|colocad",
  "Tools, spare and loose parts out": "herramienta pieza|repuesto retirad|fuera ~ suelta celda",
  "Clean and dry": "limpia|limpio seca|seco ~ celda interior",
  "Out of level over 1 m, along the lineup":
    "desnivel|nivel largo|longitudinal|longitud ~ 1 m metro lo fila",
  "Out of level over 1 m, front to back":
    "desnivel|nivel atras|detras|fondo|profundidad|transversal ~ 1 m metro delante frente",
  "Front out of line with its neighbour's":
    "frente|frontal linea|alinea|desalinea vecin|contigu|adyacente ~ fuera celda respecto",
};

const pt: Items = {
  "Transport braces, packing and desiccant taken out":
    "retirad|removid transporte|travas|calcos|fixacoes embalage ~ dessecante",
  "Anchored to the foundation": "ancorad|chumbad|fixad fundac|base ~ cubiculo painel cela",
  "Levelled, and joined to its neighbours without strain":
    "nivelad unid|acoplad ~ alinhad cubiculo painel cela vizinh adjacente contigu sem esforco tensao",
  "Busbar supports, barriers and covers fitted":
    "barra|barramento suporte|isolador tampa|cobertura|barreira|divisoria montad|instalad|colocad",
  "Pressure relief path free":
    "alivio|sobrepressao livre|desobstruid ~ via caminho duto saida pressao gases",
  "Doors, locks and handles work":
    "porta fechadura|fecho|trinco|macaneta|puxador funcionam ~ bem corretamente",
  "Shutters close by themselves and can be locked":
    "guilhotina|obturador|persiana fecha bloquea|trava|cadeado ~ sozinha por si podem pode ser se automaticamente",
  "Labels and warning signs as on the drawing":
    "etiqueta|placa|identificac advertencia|aviso|perigo ~ conforme desenho projeto",
  "Heaters and lighting fitted": "aquec|resistencia iluminac montad|instalad|colocad",
  "Tools, spare and loose parts out": "ferramenta peca|sobressalente retirad|removid|fora ~ solta",
  "Clean and dry": "limpo|limpa seco|seca ~ cubiculo painel cela interior",
  "Out of level over 1 m, along the lineup":
    "desnivel|nivelamento longo|longitudinal|comprimento ~ 1 m metro painel linha",
  "Out of level over 1 m, front to back":
    "desnivel|nivelamento tras|fundo|profundidade|transversal ~ 1 m metro frente",
  "Front out of line with its neighbour's":
    "frente linha|alinha|desalinha vizinh|adjacente ~ o fora painel cubiculo",
};

const it: Items = {
  "Transport braces, packing and desiccant taken out":
    "rimoss|tolt trasporto|fermi|blocchi|fissaggi imball ~ essiccante",
  "Anchored to the foundation": "ancorat|fissat fondazion|basamento ~ scomparto quadro",
  "Levelled, and joined to its neighbours without strain":
    "livellat unit|accoppiat|collegat ~ allineat scompart vicin adiacent contigu senza sforz tensioni",
  "Busbar supports, barriers and covers fitted":
    "sbarre|sbarra support|isolator copert|barrier|diafram|setti montat",
  "Pressure relief path free":
    "sfogo|sovrapression liber ~ via condotto percorso canale pressione gas",
  "Doors, locks and handles work": "porte|porta serratur|manigli|chiusur funzionan ~ bene",
  "Shutters close by themselves and can be locked":
    "serrand|otturator chiudono bloccabil|bloccar|lucchett ~ sole sola da si possono possibile essere",
  "Labels and warning signs as on the drawing":
    "targh|etichett|cartell avviso|avvertiment|pericolo ~ come da secondo disegno schema",
  "Heaters and lighting fitted":
    "riscald|scaldigli|anticondens illuminazion montat|installat ~ resistenz",
  "Tools, spare and loose parts out":
    "attrezz|utensil parti|pezzi|ricamb rimoss|tolt|fuori ~ sciolt",
  "Clean and dry": "pulit asciutt ~ scomparto interno",
  "Out of level over 1 m, along the lineup":
    "dislivello|livello lungo|longitudinal|lunghezza ~ 1 m metro su quadro fila in",
  "Out of level over 1 m, front to back":
    "dislivello|livello dietro|retro|profondita|trasversal ~ 1 m metro su fronte davanti in",
  "Front out of line with its neighbour's":
    "fronte linea|filo|allinea|disallinea vicin|adiacent|contigu ~ fuori scomparto rispetto suo",
};

const fr: Items = {
  "Transport braces, packing and desiccant taken out":
    "retir|enlev|depos transport|cales|brides|calage emballage ~ dessicc dessech",
  "Anchored to the foundation": "ancr|fixe fondation|massif|genie ~ cellule civil",
  "Levelled, and joined to its neighbours without strain":
    "nivel|niveau assembl|accoupl|raccord|joint ~ mise mis align cellule voisin adjacent sans contrainte effort aux",
  "Busbar supports, barriers and covers fitted":
    "barre support|isolateur capot|cloison|couvercle|ecran monte|pose|place ~ jeu jeux",
  "Pressure relief path free":
    "surpression|decharge|detente libre|degage ~ voie conduit evacuation passage pression gaz clapet",
  "Doors, locks and handles work":
    "porte serrure|poignee|fermeture fonctionnent ~ bien correctement",
  "Shutters close by themselves and can be locked":
    "volet|obturateur ferment verrouill|cadenass|condamn ~ seuls seul se peuvent etre memes eux automatiquement",
  "Labels and warning signs as on the drawing":
    "etiquette|plaque|reperage avertissement|danger ~ panneau affiche conforme selon plan schema",
  "Heaters and lighting fitted": "chauffage eclairage monte|pose|installe|place ~ resistance",
  "Tools, spare and loose parts out": "outil piece|rechange retir|enlev|sorti ~ libre detachee",
  "Clean and dry": "propre seche|sec ~ cellule interieur",
  "Out of level over 1 m, along the lineup":
    "niveau|denivel long|longitudinal|longueur ~ 1 m metre sur ecart defaut tableau",
  "Out of level over 1 m, front to back":
    "niveau|denivel arriere|profondeur|transversal ~ 1 m metre sur avant ecart defaut",
  "Front out of line with its neighbour's":
    "face|facade align|desalign|decalage voisin|adjacent|contigu ~ cellule avec ecart defaut",
};

const de: Items = {
  "Transport braces, packing and desiccant taken out":
    "transport verpackung entfernt ~ trockenmittel",
  "Anchored to the foundation": "fundament verankert|verschraubt|befestigt ~ feld auf am",
  "Levelled, and joined to its neighbours without strain":
    "ausgerichtet|nivelliert verbunden|verschraubt ~ nachbar spannungsfrei ohne verspannung feld waagerecht waagrecht",
  "Busbar supports, barriers and covers fitted":
    "sammelschiene abdeckung|schottung|schott montiert|angebracht ~ stutzer halter trager isolator",
  "Pressure relief path free": "druckentlastung frei ~ kanal weg offnung",
  "Doors, locks and handles work":
    "tur schloss|verschluss|griff|schlosser funktionieren|gangig|leichtgangig",
  "Shutters close by themselves and can be locked":
    "shutter|jalousie|klappe|verschlussklappe schliessen selbst verschliess|abschliess|verriegel|abschliessbar ~ lassen lasst sich sind",
  "Mechanical interlocks and coding fitted":
    "verriegelung mechanisch codierung|kodierung montiert|angebracht|vorhanden",
  "Labels and warning signs as on the drawing":
    "beschriftung|schild|bezeichnungsschild warnschild|warnhinweis ~ nach laut gemass plan zeichnung",
  "Heaters and lighting fitted": "heizung beleuchtung montiert|eingebaut|vorhanden",
  "Tools, spare and loose parts out": "werkzeug teile|ersatzteil entfernt|entnommen ~ lose",
  "Clean and dry": "sauber|gereinigt trocken ~ feld innen",
  "Out of level over 1 m, along the lineup":
    "waage|niveau|ebenheit langs|lange|langsrichtung ~ 1 m meter auf in abweichung anlage aus",
  "Out of level over 1 m, front to back":
    "waage|niveau|ebenheit tiefe|quer|hinten ~ 1 m meter auf in abweichung vorn nach aus",
  "Front out of line with its neighbour's":
    "front flucht|versatz|bundig nachbar ~ aus zum feld abweichung",
};

/** By language. */
export const CHECK_ITEMS: readonly Items[] = [es, pt, it, fr, de];
