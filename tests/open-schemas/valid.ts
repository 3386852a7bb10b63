import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import formats from 'ajv-formats'
import { XmlDocument, XmlParseError, XmlValidateError, XsdValidator } from 'libxml2-wasm'

/** What the schemas of others have against a text, by validators of others: where README.md beside this says. Empty: nothing. */
const schemaIn = (name: string): string => readFileSync(join(import.meta.dirname, name), 'utf8')

const ajv = new Ajv2020({ allErrors: true, strict: false })
formats.default(ajv)
const sarif = ajv.compile(JSON.parse(schemaIn('sarif-2.1.0.schema.json')))

export const againstSarif = (text: string): string[] =>
  sarif(JSON.parse(text)) ? [] : sarif.errors!.map(({ instancePath, message }) => `${instancePath}: ${message}`)

const junit = XsdValidator.fromDoc(XmlDocument.fromString(schemaIn('junit.xsd')))

export const againstJunit = (text: string): string[] => {
  try {
    using document = XmlDocument.fromString(text)
    junit.validate(document)
    return []
  } catch (error) {
    if (error instanceof XmlParseError || error instanceof XmlValidateError) return error.message.trim().split('\n')
    throw error
  }
}
